"""`baytree serve`: preview the site; rebuilds on every save."""

import argparse
import re

from builder.commands.place import shop_of

NAME = "serve"
HELP = "preview the site; rebuilds on every save"


def add_flags(parser: argparse.ArgumentParser) -> None:
    """Add the flags."""
    parser.add_argument("--port", type=_port, default=8000, metavar="N",
                        help="port (default: 8000; 0 for any that is free)")  # fmt: skip


def run(options: argparse.Namespace) -> int:
    """Serve the shop's site until interrupted."""
    from builder.commands.saved_shop import SavedShop
    from builder.site.serve_site import serve_site

    shop = shop_of(options)
    serve_site(shop, SavedShop(shop).check, options.port)
    return 0


def _port(text: str) -> int:
    if not re.fullmatch("[0-9]{1,5}", text) or int(text) > 65535:
        raise argparse.ArgumentTypeError(f"`{text}` is no port; write one from 1024 to 65535")
    return int(text)
