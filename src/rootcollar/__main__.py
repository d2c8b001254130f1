"""Let ``python -m rootcollar`` do what the command ``rootcollar`` does."""

import sys

from rootcollar.cli.main import main

if __name__ == "__main__":
    sys.exit(main())
