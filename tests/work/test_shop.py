"""The shop's list: the one that comes along, a folder of one's own, and its faults."""

from __future__ import annotations

from pathlib import Path

import pytest

from foldwright.core.quantity.length import Length
from foldwright.work.files import CannotUse
from foldwright.work.jobfile import load_job
from foldwright.work.shop import house_shop, load_shop

JOB = '[job]\nname = "A"\nsystem = "inch"\n'


def folder(path: Path, **files: str) -> Path:
    path.mkdir(exist_ok=True)
    for name, text in files.items():
        (path / f"{name}.toml").write_text(text, encoding="utf-8")
    return path


def test_the_list_that_comes_along_reads_without_a_fault() -> None:
    shop = house_shop()
    assert len(shop.springs) >= 12
    assert all(getattr(shop, name) for name in shop.__slots__)


def test_it_holds_every_kind_of_spring_sheet() -> None:
    springs = house_shop().springs.values()
    assert any(spring.rate_n_m_turn for spring in springs)
    assert any(spring.greatest_torque_n_m and spring.greatest_turns for spring in springs)
    assert any(spring.load_n and spring.load_turns is None for spring in springs)
    assert any(spring.wire for spring in springs)
    assert any(spring.speed_brake_n_m_s for spring in springs)
    assert any(spring.speed_brake_n_m_s is None for spring in springs)


def test_units_of_a_sheet_are_read() -> None:
    shop = house_shop()
    assert shop.cloths["Meadow print, indigo"].areal_mass_kg_m2 == pytest.approx(
        5.2 * 0.0339057, rel=1e-4
    )
    assert shop.cloths["Meadow print, indigo"].vertical_repeat == Length.inches("19.5")
    assert shop.tubes["Tube 38"].outside == Length.mm(38)
    assert shop.tubes["Tube 38"].stiffness_pa == 69e9


def test_ounces_in_a_linear_yard_take_the_width(tmp_path: Path) -> None:
    text = (
        'system = "inch"\n[[cloths]]\nname = "A"\n'
        'areal_mass_kg_m2 = "7 oz/lin yd"\nusable_width = 68\n'
    )
    cloth = load_shop(folder(tmp_path, cloths=text)).cloths["A"]
    assert cloth.areal_mass_kg_m2 == pytest.approx(0.125651, rel=1e-4)


def test_every_fault_of_every_file_is_told_at_once(tmp_path: Path) -> None:
    shop = folder(
        tmp_path,
        bars='system = "metric"\n[[bars]]\nname = "A"\nline_mass_kg_m = -1\nwidht = 3\n',
        rods='system = "metric"\n[[rods]]\nname = "R"\nline_mass_kg_m = 0.02\ndiameter = 4\n'
        '[[rods]]\nname = "R"\nline_mass_kg_m = 0.02\ndiameter = 4\n',
        tubes="[[tubes]]\n",
        cords="not toml",
    )
    with pytest.raises(CannotUse) as trouble:
        load_shop(shop)
    wheres = [fault.where for fault in trouble.value.faults]
    assert "bars.toml, bars.1.line_mass_kg_m" in wheres
    assert "bars.toml, bars.1.widht" in wheres
    assert "bars.toml, bars.1.thickness" in wheres
    assert "rods.toml, rods.2.name" in wheres
    assert "tubes.toml, system" in wheres
    assert "tubes.toml, tubes.1.name" in wheres
    assert any(where.endswith("cords.toml") for where in wheres)


def test_a_name_in_two_files_is_told(tmp_path: Path) -> None:
    rod = 'system = "metric"\n[[rods]]\nname = "R"\nline_mass_kg_m = 0.02\ndiameter = 4\n'
    with pytest.raises(CannotUse, match="also in another file"):
        load_shop(folder(tmp_path, one=rod, two=rod))


def test_a_folder_without_a_list_is_told(tmp_path: Path) -> None:
    with pytest.raises(CannotUse, match="no shop list here"):
        load_shop(tmp_path)


def test_a_job_names_a_folder_beside_itself(tmp_path: Path) -> None:
    rod = 'system = "metric"\n[[rods]]\nname = "R"\nline_mass_kg_m = 0.02\ndiameter = 4\n'
    folder(tmp_path / "ours", rods=rod)
    job = tmp_path / "job.toml"
    job.write_text(JOB + 'shop = "ours"\n[[shades]]\ntag = "A"\nmaterials = {rod = "R"}\n')
    reading = load_job(job)
    assert reading.faults == ()
    assert reading.job is not None
    assert list(reading.job.shop.rods) == ["R"]


def test_faults_of_the_list_and_of_the_job_are_told_together(tmp_path: Path) -> None:
    job = tmp_path / "job.toml"
    job.write_text(JOB + 'shop = "nowhere"\n[[shades]]\nroom = "A"\nmaterials = {rod = "R"}\n')
    wheres = [fault.where for fault in load_job(job).faults]
    assert wheres == [str(tmp_path / "nowhere"), "shades.1.tag"]
