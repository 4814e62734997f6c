"""The shell completes what there is: commands, flags, their choices, and the trees of the shop."""

import shutil
import subprocess
from pathlib import Path

import pytest

from builder.commands.main import COMMANDS, main

SAMPLES = Path(__file__).parents[1] / "samples"
ASK = """
source {script}
cd {folder}
COMP_WORDS=({words}); COMP_CWORD=$((${{#COMP_WORDS[@]}} - 1))
_baytree
printf '%s\\n' "${{COMPREPLY[@]}}"
"""


def offered(
    words: str, script: Path, capsys: pytest.CaptureFixture[str], folder: Path = SAMPLES
) -> set[str]:
    """Return what bash offers for the last of some words."""
    if not shutil.which("bash"):
        pytest.skip("no bash on this machine")
    assert main(["completion"]) == 0
    script.write_text(capsys.readouterr().out, "utf-8")
    asked = ASK.format(script=script, folder=folder, words=f"baytree {words}")
    done = subprocess.run(["bash", "-c", asked], capture_output=True, text=True, check=True)
    assert not done.stderr
    return {*done.stdout.split()}


@pytest.mark.parametrize(
    ("words", "some"),
    [
        ("''", {command.NAME for command in COMMANDS}),
        ("che", {"check"}),
        ("new --", {"--from-record"}),
        ("new ''", {"tree", "how-to"}),
        ("check --format ''", {"sarif", "github"}),
        ("--shop . walk charging/", {"charging/lamp-on"}),
        ("rename horn", {"horn/silent"}),
        ("print charging/lamp-on --vehicle ''", {"tern"}),
        ("print --record ''", set()),  # then the shell offers files
    ],
)
def test_it_offers_what_can_stand_there(
    words: str, some: set[str], tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Only that, and at least this."""
    found = offered(words, tmp_path / "completion.sh", capsys)
    assert some <= found
    assert bool(found) == bool(some)
    last = words.split()[-1].strip("'")
    assert all(one.startswith(last) for one in found)


def test_trees_are_those_of_the_nearest_shop(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """From a folder below it, too; where there is no shop, none."""
    script = tmp_path / "completion.sh"
    assert "horn/silent" in offered("walk ''", script, capsys, SAMPLES / "kb/how-to")
    assert offered("walk ''", script, capsys, tmp_path) == set()


def test_zsh_offers_the_same(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """A real zsh completes a command, and the trees of the shop it stands in."""
    if not shutil.which("zsh"):
        pytest.skip("no zsh on this machine")
    assert main(["completion"]) == 0
    script = tmp_path / "completion.sh"
    script.write_text(capsys.readouterr().out, "utf-8")
    typed = Path(__file__).with_name("type_in_zsh.zsh")
    for words, completed in (("che", "check"), ("walk horn", "walk horn/silent")):
        done = subprocess.run(
            ["zsh", "-f", typed, script, f"baytree {words}"],
            cwd=SAMPLES, capture_output=True, text=True, check=False, timeout=60,
        )  # fmt: skip
        assert f"baytree {completed}" in done.stdout, done
