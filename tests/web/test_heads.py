"""What stands against a shade is counted at its head and in its job, and the count leads to it."""

from __future__ import annotations

import re

from starlette.testclient import TestClient

COUNT = r"1 stop(, \d+ questions?)?"


def stopped(client: TestClient, job: int) -> str:
    """Give the address of the demo's one shade that is stopped."""
    page = client.get(f"/jobs/{job}").text
    found = re.search(rf'href="(/jobs/1/shades/\d+)#findings">{COUNT}<', page)
    assert found is not None
    return found[1]


def test_the_head_of_a_stopped_shade_leads_to_its_findings(client: TestClient, job: int) -> None:
    page = client.get(stopped(client, job)).text
    head = page.partition('class="desk"')[0]
    assert re.search(rf'to-findings stop"><a href="#findings">{COUNT}</a>', head)
    assert 'id="findings"' in page


def test_a_job_tells_the_first_stop_of_a_shade_alone(client: TestClient, job: int) -> None:
    address = stopped(client, job)
    rows = client.get(f"/jobs/{job}").text.split('<li class="row shade-row">')[1:]
    for number, row in enumerate(rows, start=1):
        told = row.partition('class="open-findings"')[2].partition("</div>")[0]
        is_stopped = address.endswith(f"/{number}")
        assert told.count('class="severity') == is_stopped
        assert ("#findings" in told) or not is_stopped
