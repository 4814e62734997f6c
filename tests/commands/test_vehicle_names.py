"""`--vehicle`: which vehicle is meant, and which trees are for it."""

import shutil
from pathlib import Path

import pytest

from builder.commands.main import main

SAMPLES = Path(__file__).parents[1] / "samples"
FOR_ONE = "steering/assist-lamp-after-module-swap"  # for the Tern alone


@pytest.fixture(scope="module")
def shop(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Copy the samples, with a second vehicle."""
    folder = Path(shutil.copytree(SAMPLES, tmp_path_factory.mktemp("shop") / "samples"))
    (folder / "kb" / "vehicles" / "fell.yml").write_text("make: Brindal\nmodel: Fell\n", "utf-8")
    return folder


@pytest.mark.parametrize(
    ("words", "message"),
    [
        (("charging/lamp-on", "--vehicle", "tren"),
         "there is no vehicle `tren` in kb/vehicles/; did you mean `tern`?"),
        (("charging/lamp-on", "--vehicle", "zzz"), "write its ID; known: `fell`, `tern`"),
        ((FOR_ONE, "--vehicle", "fell"), f"`{FOR_ONE}` isn't for the Brindal Fell, it's for the "
         "Corvane Tern 2017 to 2022; use `--vehicle tern`"),
        (("charging/lamp-on", "--vehicle", "tern", "--sheet", "customer"),
         "--vehicle is for wall charts and bench sheets"),
    ],
)  # fmt: skip
def test_a_vehicle_that_does_not_go_with_the_sheet_is_refused(
    shop: Path, words: tuple[str, ...], message: str, capsys: pytest.CaptureFixture[str]
) -> None:
    """Pins of another vehicle would send the probe to a wrong wire: nothing is printed."""
    out = shop / "out"
    assert main(["--shop", str(shop), "print", *words, "--out", str(out)]) == 2
    assert message in capsys.readouterr().err
    assert not out.exists()


def test_a_vehicle_is_known_by_its_name_too(shop: Path) -> None:
    """`Tern` is `tern`; the file bears the vehicle's ID beside the tree's."""
    command = ("print", "charging/lamp-on", "--vehicle", "Tern", "--sheet", "bench")
    assert main(["--shop", str(shop), *command, "--out", str(shop / "prints")]) == 0
    assert (shop / "prints" / "charging" / "lamp-on.tern.bench.pdf").stat().st_size
