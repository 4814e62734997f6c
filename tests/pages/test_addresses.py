"""Addresses: no name that an author chooses takes the page of a folder."""

import pytest

from builder.pages.addresses import file_slug


@pytest.mark.parametrize("name", ["index", "Index", "README", "readme", "- README -"])
def test_no_record_takes_the_page_of_its_folder(name: str) -> None:
    """The list of a folder is its `index`, and the engine makes it of a `README` as well."""
    assert file_slug(name).lower() not in ("index", "readme")


def test_other_names_stay_as_they_are() -> None:
    """Capitals and digits stay; blanks become hyphens."""
    assert file_slug("steering assist 2") == "steering-assist-2"
    assert file_slug("Indexed") == "Indexed"
