"""The workflow, the hook, and the README: one check with one strictness, nothing unpinned."""

import os
import re
import subprocess
from pathlib import Path
from typing import Any

import pytest
import yaml

ROOT = Path(__file__).parents[2]
WORKFLOW = ROOT / ".github" / "workflows" / "check-trees.yml"
HOOKS = ROOT / ".pre-commit-hooks.yaml"
COMMIT = "0123456789abcdef0123456789abcdef01234567"


def steps() -> list[dict[str, Any]]:
    """Return the steps of the workflow."""
    found: list[dict[str, Any]] = yaml.safe_load(WORKFLOW.read_text("utf-8"))["jobs"]["check"][
        "steps"
    ]
    return found


def step(name: str) -> str:
    """Return the commands of a step."""
    (found,) = (one["run"] for one in steps() if one["name"] == name)
    return str(found)


def checks(text: str) -> set[str]:
    """Return the flags of every `baytree check` command in a text, without its format."""
    commands = re.findall(r"baytree check((?: --[a-z]+(?: [a-z]+)?)*)", text)
    return {re.sub(r" --format [a-z]+", "", flags).strip() for flags in commands}


def test_workflow_hook_and_readme_run_the_same_check() -> None:
    """What passes before a commit passes the pull request, and is what the README promises."""
    readme = (ROOT / "README.md").read_text("utf-8")
    of_the_foreman = readme[readme.index("A pull request") : readme.index("## A shop of your own")]
    (hook,) = yaml.safe_load(HOOKS.read_text("utf-8"))
    commands = "\n".join(one["run"] for one in steps())
    assert checks(commands) == {"--strict"}
    assert checks(str(hook["entry"])) == {"--strict"}
    assert checks(of_the_foreman) == {"--strict"}


def test_the_workflow_trusts_no_action_and_no_bare_name() -> None:
    """Nothing runs that could change under the shop: no action, no package by name alone."""
    assert all("uses" not in one for one in steps())
    assert not re.search(r"pip\S* install[^\n]*\bbaytree(\s|$)", WORKFLOW.read_text("utf-8"))
    assert "latest" not in WORKFLOW.read_text("utf-8")


@pytest.mark.parametrize(
    ("repository", "commit", "installed"),
    [
        ("FILL-IN", "FILL-IN", ""),
        ("https://git.example/shop/baytree", "main", ""),
        ("https://git.example/shop/baytree", COMMIT[:12], ""),
        ("http://git.example/shop/baytree", COMMIT, ""),
        (
            "https://git.example/shop/baytree",
            COMMIT,
            f"git+https://git.example/shop/baytree@{COMMIT}",
        ),
    ],
)
def test_a_shop_installs_a_fixed_commit_or_nothing(
    tmp_path: Path, repository: str, commit: str, installed: str
) -> None:
    """Until both values are filled in, the step stops and says so; then it installs that commit."""
    stand_in(tmp_path)
    done = install(tmp_path, {"BAYTREE_REPOSITORY": repository, "BAYTREE_COMMIT": commit})
    asked = tmp_path / "asked"
    assert (asked.read_text().split()[-1] if asked.exists() else "") == installed
    assert done.returncode == (0 if installed else 1)
    assert ("::error::Fill in BAYTREE_REPOSITORY" in done.stdout) is not bool(installed)


def test_baytree_itself_is_checked_at_the_commit_checked_out(tmp_path: Path) -> None:
    """In its own repository Baytree installs what was checked out, whatever the placeholders."""
    stand_in(tmp_path)
    (tmp_path / "pyproject.toml").write_text((ROOT / "pyproject.toml").read_text("utf-8"), "utf-8")
    assert install(tmp_path, {}).returncode == 0
    assert (tmp_path / "asked").read_text().split()[-1] == "."


def stand_in(folder: Path) -> None:
    """Put a `python3` into the folder that makes a `pip` which only writes down what is asked."""
    pip = f'#!/bin/sh\necho "$@" > {folder}/asked\n'
    python = f"""#!/bin/sh
mkdir -p "$3/bin"
cat > "$3/bin/pip" <<'PIP'
{pip}PIP
chmod +x "$3/bin/pip"
"""
    (folder / "python3").write_text(python)
    (folder / "python3").chmod(0o755)


def install(folder: Path, environment: dict[str, str]) -> subprocess.CompletedProcess[str]:
    """Run the workflow's install step as the runner does."""
    given = yaml.safe_load(WORKFLOW.read_text("utf-8"))["env"] | environment
    runner = {"RUNNER_TEMP": str(folder), "GITHUB_PATH": str(folder / "path")}
    return subprocess.run(
        ["bash", "--noprofile", "--norc", "-eo", "pipefail", "-c", step("Install Baytree")],
        cwd=folder,
        env={"PATH": f"{folder}:{os.environ['PATH']}"} | given | runner,
        capture_output=True,
        text=True,
        check=False,
    )
