"""The content policy holds in a real browser, and the watch that proves it is awake."""

from __future__ import annotations

from playwright.sync_api import Browser
from tests.browser.conftest import DESK, Record, Workroom, watched


def test_a_script_written_into_a_page_does_not_run(
    browser: Browser, workroom: Workroom, record: Record
) -> None:
    document = workroom.book.open(1).document
    document["shades"][0]["room"] = "<img src=x onerror='document.title=1'><script>1</script>"
    workroom.book.save(1, document, follows=1)
    context = browser.new_context(viewport=DESK)
    page = watched(context, record)
    page.goto(workroom.shade(1))
    assert page.title() == "Stair · Guesthouse at the weir · Foldwright"
    assert page.locator(".title-block img").count() == 0
    assert record.complaints == []
    context.close()


def test_the_watch_sees_a_breach_of_the_policy_and_a_stranger(
    browser: Browser, workroom: Workroom, record: Record
) -> None:
    context = browser.new_context(viewport=DESK)
    page = watched(context, record)
    page.goto(workroom.address)
    page.evaluate("() => { document.body.innerHTML += '<p style=\"color:red\">a</p>' }")
    page.evaluate("() => fetch('http://127.0.0.1:9/').catch(() => 0)")
    page.wait_for_timeout(100)
    context.close()
    assert any("style" in complaint for complaint in record.complaints)
    assert any("127.0.0.1:9" in complaint for complaint in record.complaints)
