"""What all tests share: a cache folder of their own."""

from collections.abc import Iterator

import pytest


@pytest.fixture(scope="session", autouse=True)
def cache_folder(tmp_path_factory: pytest.TempPathFactory) -> Iterator[None]:
    """Keep what checks and builds remember away from the user's own cache folder."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("XDG_CACHE_HOME", str(tmp_path_factory.mktemp("cache")))
        yield
