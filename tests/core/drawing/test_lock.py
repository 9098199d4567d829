import pytest

from foldwright.core.drawing.lock import lock_drawing
from foldwright.core.drawing.model import Arc, Circle, Layer, Line, Polyline
from foldwright.core.lift.choices import Lock

# What each lock blocks: common practice, no source.
BLOCKED_WAYS = [(Lock.ONE_WAY, 1), (Lock.TWO_WAY, 2), (Lock.NONE, 0)]


@pytest.mark.parametrize(("lock", "blocked"), BLOCKED_WAYS)
def test_each_blocked_way_of_turning_ends_at_a_bar(lock: Lock, blocked: int) -> None:
    elements = lock_drawing(lock).elements
    assert sum(isinstance(element, Arc) for element in elements) == 2
    assert sum(isinstance(element, Line) for element in elements) == blocked


def test_a_one_way_lock_blocks_rising() -> None:
    bar = next(e for e in lock_drawing(Lock.ONE_WAY).elements if isinstance(e, Line))
    rising = next(e for e in lock_drawing(Lock.ONE_WAY).elements if isinstance(e, Arc))
    assert rising.reverse  # rising is clockwise in the sketch
    assert bar.start.y > 0  # and its arrow runs over the top
    assert lock_drawing(Lock.ONE_WAY).description.endswith("still sinks.")


def test_a_one_way_wheel_has_saw_teeth_and_a_two_way_wheel_square_ones() -> None:
    def corners(lock: Lock) -> int:
        wheel = next(
            e
            for e in lock_drawing(lock).elements
            if isinstance(e, Polyline) and e.layer is Layer.LOCK
        )
        return len(wheel.points)

    assert corners(Lock.TWO_WAY) == 2 * corners(Lock.ONE_WAY)


def test_the_pawl_of_a_one_way_lock_is_squeezed_when_the_wheel_would_rise() -> None:
    # Clockwise at the pawl, up and to the right of the hub, is down and to the right: there
    # its pivot must lie.
    wheel, pawl = (e for e in lock_drawing(Lock.ONE_WAY).elements if isinstance(e, Polyline))
    pivot, tip, _ = pawl.points
    assert (pivot.x - tip.x) > 0 > (pivot.y - tip.y)
    # The steep face of the tooth lies on the counter-clockwise side of the pawl.
    root, crest = wheel.points[:2]
    assert crest.x * root.y - crest.y * root.x < 0


def test_without_a_lock_the_rim_is_plain() -> None:
    assert not any(isinstance(e, Polyline) for e in lock_drawing(Lock.NONE).elements)
    assert any(isinstance(e, Circle) for e in lock_drawing(Lock.NONE).elements)


def test_of_a_lock_that_is_not_known_nothing_is_claimed() -> None:
    drawing = lock_drawing(Lock.UNKNOWN)
    assert not any(isinstance(e, Arc | Line | Polyline) for e in drawing.elements)
    assert "until somebody has looked" in drawing.description
