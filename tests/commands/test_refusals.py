"""A command line that can't be read is answered with the one that was likely meant."""

import shutil
from pathlib import Path

import pytest

from builder.commands.main import main

SHOP = Path(__file__).parents[1] / "shop"


@pytest.mark.parametrize(
    ("words", "answer"),
    [
        ("check --strct", "did you mean `--strict`?"),
        ("check --zzz", "there is no `--zzz` here; known: `--help`, `--format`, `--strict`"),
        ("check --shop x", "`--shop` goes before the command: `baytree --shop x check`"),
        ("check --shop=x", "`--shop` goes before the command: `baytree --shop=x check`"),
        ("chek", "COMMAND can't be `chek`; did you mean `check`"),
        ("new charging/hums tree", "write `baytree new tree charging/hums`"),
        ("new tre charging/hums", "KIND can't be `tre`; did you mean `tree`?"),
        ("new zzz charging/hums", "KIND can't be `zzz`; use one of `tree`, `procedure`"),
        ("cases job.json", "write `baytree cases add job.json`"),
        ("print horn/silent --distance 10", "10 what? write `10ft` or `10m`"),
    ],
)
def test_what_was_meant_is_offered(
    words: str, answer: str, capsys: pytest.CaptureFixture[str]
) -> None:
    """A slip in an option or a kind, the wrong order, a flag in the wrong place, no unit."""
    with pytest.raises(SystemExit):
        main(words.split(" "))
    assert answer in " ".join(capsys.readouterr().err.split())


def test_a_mistyped_folder_is_no_empty_shop(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Nobody is told to create a shop where one is beside it."""
    shutil.copytree(SHOP, tmp_path / "shop")
    assert main(["--shop", str(tmp_path / "shp"), "check"]) == 2
    told = capsys.readouterr().err
    assert "there is no folder" in told
    assert f"did you mean `{tmp_path / 'shop'}`?" in told


def test_an_error_of_the_system_is_a_sentence(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """No number of an error, and the file's name."""
    assert main(["--shop", str(SHOP), "cases", "add", str(tmp_path / "no.json")]) == 2
    told = capsys.readouterr().err
    assert f"there is no file `{tmp_path / 'no.json'}`" in told
    assert "Errno" not in told
