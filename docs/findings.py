"""Read out of the sources every finding that the rooms of the core can give.

Each place that makes a finding is followed back through the helpers it is made by, until
its id, its severity and its stage are known. What depends on the shade stands as "…".
"""

from __future__ import annotations

import ast
from collections.abc import Iterable, Iterator, Mapping
from collections.abc import Set as AbstractSet
from dataclasses import dataclass
from functools import cache
from importlib import import_module
from itertools import product
from pathlib import Path
from types import ModuleType
from typing import Any

from foldwright.core.facts.house import house_habits
from foldwright.core.why.figure import Figure
from foldwright.core.why.finding import Finding, Severity, Stage
from foldwright.core.why.source import Source, Status

SOURCES = Path(__file__).parents[1] / "src"
FACTS = {Status.PUBLISHED, Status.PRACTICE, Status.HOUSE, Status.MEMORY}
TOLD = {"id", "severity", "stage"}
LOOPS = (ast.For, ast.comprehension)
Values = Mapping[str, Any]
Fields = Mapping[str, ast.expr]


class Unknown:
    """Stands for whatever depends on the shade; of it the house's habits alone are known."""

    habits = house_habits()
    __iter__ = None

    def __getitem__(self, _: object) -> Unknown:
        """Know nothing of what is in it."""
        return self

    def __getattr__(self, name: str) -> Unknown:
        """Know nothing of its parts, and be no number, no list and no text."""
        if name.startswith("__"):
            raise AttributeError(name)
        return self

    def __call__(self, *_: object, **__: object) -> Unknown:
        """Know nothing of what it gives."""
        return self

    def __str__(self) -> str:
        """Stand in a sentence."""
        return "…"


UNKNOWN = Unknown()


@dataclass(frozen=True, kw_only=True)
class Said:
    """One way in which a finding can be given."""

    id: str
    severity: Severity
    stage: Stage
    sentence: str
    limits: tuple[Figure[Any], ...]  # those that are the same for every shade
    source: Source | None


@dataclass(frozen=True, kw_only=True)
class Place:
    """A call, the function that it stands in, and the module."""

    module: ModuleType
    function: ast.FunctionDef | None
    call: ast.Call

    @property
    def called(self) -> object:
        """Give what is called, where it is a name of the module."""
        name = self.call.func.id if isinstance(self.call.func, ast.Name) else ""
        return vars(self.module).get(name)

    @property
    def parameters(self) -> list[str]:
        """Name the parameters of the function."""
        return _parameters(self.function) if self.function else []

    @property
    def defaults(self) -> dict[str, ast.expr]:
        """Give what stands in for parameters that are not given."""
        if self.function is None:
            return {}
        words = self.function.args
        plain = dict(zip(reversed(words.args), reversed(words.defaults), strict=False))
        named = dict(zip(words.kwonlyargs, words.kw_defaults, strict=True))
        return {word.arg: value for word, value in (plain | named).items() if value is not None}


def findings() -> Iterator[Said]:
    """Give every way in which a room can give a finding, in the order of the sources."""
    for place in places():
        if place.called is Finding:
            for values in _values(place, _named(place.call), TOLD):
                yield _said(values)


def _said(values: Values) -> Said:
    if UNKNOWN in (values["id"], values["severity"], values["stage"]) or "…" in values["id"]:
        message = f"Nobody can tell what finding is made here: {values}"
        raise ValueError(message)
    figures, source = values.get("figures", ()), values.get("source")
    return Said(
        id=values["id"],
        severity=values["severity"],
        stage=values["stage"],
        sentence=str(values["sentence"]),
        limits=tuple(filter(_is_fact, figures)) if isinstance(figures, tuple) else (),
        source=source if isinstance(source, Source) else None,
    )


def _is_fact(figure: object) -> bool:
    return isinstance(figure, Figure) and figure.status in FACTS


@cache
def places() -> tuple[Place, ...]:
    """Give every call in the core by a plain name."""
    files = sorted((SOURCES / "foldwright" / "core").rglob("*.py"))
    return tuple(place for file in files for place in _places_in(file))


def _places_in(file: Path) -> Iterator[Place]:
    module = import_module(".".join(file.relative_to(SOURCES).with_suffix("").parts))
    tree = ast.parse(file.read_text(encoding="utf-8"))
    functions = [node for node in ast.walk(tree) if isinstance(node, ast.FunctionDef)]
    home = {id(inner): function for function in functions for inner in ast.walk(function)}
    for node in ast.walk(tree):
        if isinstance(node, ast.Call) and isinstance(node.func, ast.Name):
            yield Place(module=module, function=home.get(id(node)), call=node)


def _parameters(function: ast.FunctionDef) -> list[str]:
    words = function.args
    spread = [words.vararg] if words.vararg else []
    return [word.arg for word in (*words.args, *spread, *words.kwonlyargs)]


def _named(call: ast.Call) -> Fields:
    return {str(word.arg): word.value for word in call.keywords}


def _values(place: Place, fields: Fields, told: AbstractSet[str]) -> Iterator[Values]:
    """Give the values that fields can have together, followed back until some of them are told."""
    for known in _worlds(place, _names(place, [fields[name] for name in told & fields.keys()])):
        every = (evaluate(field, place, known) for field in fields.values())
        yield from (dict(zip(fields, values, strict=True)) for values in product(*every))


def _worlds(place: Place, wanted: AbstractSet[str]) -> Iterator[Values]:
    """Give what the names of a place stand for: callers followed back, loops run through."""
    told = wanted & set(place.parameters)
    given = _given(place.module, place.function, frozenset(told)) if told and place.function else ()
    unknown = dict.fromkeys(place.parameters, UNKNOWN) | {"habits": UNKNOWN.habits}
    for arguments in given or [{}]:
        left_out = place.defaults if arguments else {}
        known = {name: _value(default, place, {}) for name, default in left_out.items()}
        yield from _looped(place, {**unknown, **known, **arguments})


@cache
def _given(
    module: ModuleType, function: ast.FunctionDef, told: frozenset[str]
) -> tuple[Values, ...]:
    """Give the arguments of every call of a function."""
    own = vars(module).get(function.name)
    callers = [place for place in places() if own is not None and place.called is own]
    return tuple(
        values
        for caller in callers
        for values in _values(caller, _arguments(caller.call, function), told)
    )


def _arguments(call: ast.Call, function: ast.FunctionDef) -> Fields:
    names, spread = _parameters(function), function.args.vararg
    plain = names.index(spread.arg) if spread else len(names)
    rest = ast.Tuple(elts=call.args[plain:], ctx=ast.Load())
    taken = dict(zip(names[:plain], call.args, strict=False))
    return {**taken, **({spread.arg: rest} if spread else {}), **_named(call)}


def _looped(place: Place, known: Values) -> Iterator[Values]:
    """Run through the loops that a call stands in, as far as it is known what they run through."""
    worlds = [known]
    for loop in ast.walk(place.function) if place.function else ():
        if isinstance(loop, LOOPS) and _around(loop, place):
            worlds = [turn for world in worlds for turn in _turns(loop, place, world)]
    yield from worlds


def _around(loop: ast.AST, place: Place) -> bool:
    """Tell whether a call is repeated by a loop, or stands in what a comprehension gives."""
    for node in ast.walk(place.function) if place.function else ():
        inside = node is loop or loop in getattr(node, "generators", ())
        if inside and any(inner is place.call for inner in ast.walk(node)):
            return True
    return False


def _turns(loop: ast.For | ast.comprehension, place: Place, known: Values) -> Iterator[Values]:
    for through in evaluate(loop.iter, place, known):
        try:
            items = list(through)
        except TypeError:
            items = [UNKNOWN]
        yield from ({**known, **_unpacked(loop.target, item)} for item in items)


def _unpacked(target: ast.expr, item: object) -> Values:
    if isinstance(target, ast.Name):
        return {target.id: item}
    names = [each.id for each in ast.walk(target) if isinstance(each, ast.Name)]
    parts = item if isinstance(item, tuple) else [UNKNOWN] * len(names)
    return dict(zip(names, parts, strict=True))


def evaluate(expression: ast.expr, place: Place, known: Values) -> list[Any]:
    """Give all values that an expression can have; what cannot be told is unknown."""
    if isinstance(expression, ast.IfExp):
        taken = _taken(expression, place, known)
        return [value for way in taken for value in evaluate(way, place, known)]
    if isinstance(expression, ast.JoinedStr):
        parts = (evaluate(_piece(part), place, known) for part in expression.values)
        return ["".join(map(str, one)) for one in product(*parts)]
    if isinstance(expression, ast.BinOp) and isinstance(expression.op, ast.Add):
        sides = (evaluate(side, place, known) for side in (expression.left, expression.right))
        return [_joined(left, right) for left, right in product(*sides)]
    unsaid = [name for name in _own_names(expression) if name not in known]
    local = {name: ways for name in unsaid if (ways := _assigned(name, place))}
    values = [
        [value for way in ways for value in evaluate(way, place, known)] for ways in local.values()
    ]
    every = (dict(zip(local, one, strict=True)) for one in product(*values))
    return [_value(expression, place, {**known, **one}) for one in every]


def _taken(choice: ast.IfExp, place: Place, known: Values) -> tuple[ast.expr, ...]:
    """Give the way that is taken, or both where that depends on the shade."""
    certain = not any(known.get(name) is UNKNOWN for name in _own_names(choice.test))
    answer = _value(choice.test, place, known) if certain else UNKNOWN
    if isinstance(answer, bool):
        return (choice.body,) if answer else (choice.orelse,)
    return choice.body, choice.orelse


def _piece(part: ast.expr) -> ast.expr:
    return part.value if isinstance(part, ast.FormattedValue) else part


def _joined(left: Any, right: Any) -> Any:
    return f"{left}{right}" if isinstance(left, str) or isinstance(right, str) else UNKNOWN


def _value(expression: ast.expr, place: Place, known: Values) -> Any:
    whole = ast.fix_missing_locations(ast.Expression(expression))
    try:
        code = compile(whole, place.module.__name__, "eval")
        return eval(code, dict(vars(place.module)), dict(known))  # noqa: S307 - our own sources
    except Exception:  # noqa: BLE001 - whatever fails depends on the shade
        return UNKNOWN


def _own_names(expression: ast.AST) -> set[str]:
    return {node.id for node in ast.walk(expression) if isinstance(node, ast.Name)}


def _names(place: Place, expressions: Iterable[ast.expr]) -> set[str]:
    """Give the names that expressions rest on, through the assignments and loops of their place."""
    found: set[str] = set()
    waiting = [name for expression in expressions for name in _own_names(expression)]
    while waiting:
        name = waiting.pop()
        if name not in found:
            found.add(name)
            waiting += [inner for way in _origins(name, place) for inner in _own_names(way)]
    return found


def _origins(name: str, place: Place) -> Iterator[ast.expr]:
    yield from _assigned(name, place)
    for node in ast.walk(place.function) if place.function else ():
        if isinstance(node, LOOPS) and name in _own_names(node.target):
            yield node.iter


def _assigned(name: str, place: Place) -> list[ast.expr]:
    """Give what a function assigns to a name, in order; what is added to it belongs to the last."""
    ways: list[ast.expr] = []
    for node in sorted(_statements(place), key=lambda node: node.lineno):
        if isinstance(node, ast.Assign) and name in _own_names(node.targets[0]):
            ways.append(_part(name, node))
        if isinstance(node, ast.AugAssign) and name in _own_names(node.target):
            ways[-1] = ast.BinOp(left=ways[-1], op=ast.Add(), right=node.value)
    return ways


def _part(name: str, node: ast.Assign) -> ast.expr:
    """Give the part of an assignment that goes to one name."""
    target, value = node.targets[0], node.value
    if isinstance(target, ast.Tuple) and isinstance(value, ast.Tuple):
        names = [each.id if isinstance(each, ast.Name) else "" for each in target.elts]
        return value.elts[names.index(name)]
    return value


def _statements(place: Place) -> Iterator[ast.stmt]:
    for node in ast.walk(place.function) if place.function else ():
        if isinstance(node, ast.stmt):
            yield node
