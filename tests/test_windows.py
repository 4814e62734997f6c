"""Nothing that only Unix has is needed: every command works as on a shop's own Windows PC."""

import os
import shutil
import subprocess
import sys
from pathlib import Path

import builder

REPO = Path(builder.__file__).parents[1]  # where subprocesses find our code
SHOP = Path(__file__).parent / "shop"
TREE = SHOP / "trees" / "horn" / "silent.yml"
COPIES = 16  # so many that trees are spread over processes, which on Windows start from nothing
# Before our modules are read: what Windows lacks is gone, processes start from nothing, and a file
# that is opened without its encoding is an error of ours. Its console has 256 characters.
WITHOUT_UNIX = """
import multiprocessing, os, sys, warnings
for name in ("fcntl", "grp", "pwd", "resource", "termios"):
    sys.modules[name] = None
import platformdirs.unix  # chosen by the name of the system, so it still needs what is taken away
for name in ("chown", "fork", "lchown", "mkfifo", "O_NOFOLLOW", "sched_getaffinity"):
    delattr(os, name)
os.cpu_count = lambda: 2
multiprocessing.set_start_method("spawn")
warnings.filterwarnings("error", category=EncodingWarning, module=r"builder\\.")
from builder.commands.main import main
from builder.site import swap
swap._exchange_call = lambda: None
sys.exit(main(sys.argv[1:]))
"""


def baytree(shop: Path, *words: str) -> subprocess.CompletedProcess[str]:
    """Run a command in a shop without what only Unix has."""
    said = {"PYTHONIOENCODING": "cp1252", "PYTHONPATH": str(REPO)}
    return subprocess.run(
        [sys.executable, "-X", "warn_default_encoding", "-c", WITHOUT_UNIX, *words],
        cwd=shop, env=os.environ | said, capture_output=True, encoding="cp1252", timeout=300,
        check=False,
    )  # fmt: skip


def test_a_shop_is_checked_built_printed_and_walked(tmp_path: Path) -> None:
    """In a folder with blanks, on two cores, with a console that has no arrows; twice over."""
    shop = tmp_path / "Our shop (new)"
    shutil.copytree(SHOP, shop)
    for number in range(COPIES):
        shutil.copyfile(TREE, shop / "trees" / "horn" / f"silent-{number}.yml")
    for words in (["check"], ["build", "--no-prints"], ["print", "horn/silent"]):
        run = baytree(shop, *words)
        assert run.returncode == 0, (words, run.stdout, run.stderr)
    assert (shop / "site" / "index.html").is_file()
    assert not [one for one in shop.iterdir() if one.name.startswith(".site")]
