"""The pictures of articles: what is no plain picture is told and never published."""

from pathlib import Path

import pytest

from builder.reader.pictures import pictures

HEAD = '<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink"'
PLAIN = {
    "lines.svg": f'{HEAD}><path d="M0 0h9"/><text>one = 1, on = 12 V</text></svg>',
    "own-parts.svg": f'{HEAD}><use href="#plug"/><image href="data:image/png;base64,AA"/></svg>',
    "photo.JPG": "x",
}
UNSAFE = {
    "script.svg": f"{HEAD}><script>go()</script></svg>",
    "prefixed.svg": '<s:svg xmlns:s="http://www.w3.org/2000/svg"><s:script>go()</s:script></s:svg>',
    "event.svg": f'{HEAD}\n onload="go()"/>',
    "link.svg": f'{HEAD}><a xlink:href="javascript:go()"><path/></a></svg>',
    "fetched.svg": f'{HEAD}><image href="https://elsewhere.example/x.png"/></svg>',
    "page-inside.svg": f"{HEAD}><foreignObject><p/></foreignObject></svg>",
    "entity.svg": f'<!DOCTYPE svg [<!ENTITY a "b">]>{HEAD}/>',
    "page.html": "<p>",
}


def put(shop: Path, name: str, text: str) -> None:
    """Write a file among the pictures."""
    folder = shop / "kb/how-to/pictures"
    folder.mkdir(parents=True, exist_ok=True)
    (folder / name).write_text(text, "utf-8")


@pytest.mark.parametrize("name", PLAIN)
def test_a_plain_picture_is_known_by_its_size(tmp_path: Path, name: str) -> None:
    """Text about being on, parts of its own and pictures inside a drawing run nothing."""
    put(tmp_path, name, PLAIN[name])
    assert pictures(tmp_path) == ({name: len(PLAIN[name])}, [])


@pytest.mark.parametrize("name", UNSAFE)
def test_what_could_run_is_no_picture(tmp_path: Path, name: str) -> None:
    """Opened by itself, a drawing with a script is a page that runs it."""
    put(tmp_path, name, UNSAFE[name])
    sizes, findings = pictures(tmp_path)
    assert sizes == {}
    assert [finding.rule for finding in findings] == ["unsafe-picture"]
    assert findings[0].at.file == f"kb/how-to/pictures/{name}"


@pytest.mark.parametrize("target", ["cases/2026-0188.yml", "how-to/brakes.md", "../trees/a/b.yml"])
def test_a_link_out_of_the_pictures_is_never_published(tmp_path: Path, target: str) -> None:
    """A closed job under a picture's name would be published with its mileage and its dates."""
    put(tmp_path, "plain.svg", PLAIN["lines.svg"])
    private = tmp_path / "kb" / target
    private.parent.mkdir(parents=True, exist_ok=True)
    private.write_text("vehicle: {km: 171400}")
    (tmp_path / "kb/how-to/pictures/drawing.png").symlink_to(private)
    (tmp_path / "kb/how-to/pictures/same.svg").symlink_to("plain.svg")
    sizes, findings = pictures(tmp_path)
    assert set(sizes) == {"plain.svg", "same.svg"}
    assert [(one.rule, one.at.file) for one in findings] == [
        ("link", "kb/how-to/pictures/drawing.png")
    ]


def test_a_linked_folder_of_pictures_is_never_published(tmp_path: Path) -> None:
    """Nothing is published when the folder itself leads to another one."""
    (tmp_path / "kb/cases").mkdir(parents=True)
    (tmp_path / "kb/cases/plan.png").write_text("private")
    (tmp_path / "kb/how-to").mkdir()
    (tmp_path / "kb/how-to/pictures").symlink_to(tmp_path / "kb/cases")
    sizes, findings = pictures(tmp_path)
    assert sizes == {}
    assert [one.rule for one in findings] == ["link"]


def test_a_link_is_no_picture_of_the_shop(tmp_path: Path) -> None:
    """What a link leads to outside is never published, and a link to nothing is told."""
    shop = tmp_path / "shop"
    put(shop, "plain.svg", PLAIN["lines.svg"])
    (tmp_path / "secret.png").write_text("secret")
    (shop / "kb/how-to/pictures/out.png").symlink_to(tmp_path / "secret.png")
    (shop / "kb/how-to/pictures/nowhere.png").symlink_to("missing.png")
    sizes, findings = pictures(shop)
    assert set(sizes) == {"plain.svg"}
    assert [finding.rule for finding in findings] == ["link", "link"]
