"""`python -m benchsheaf` is the command."""

from benchsheaf.cli import main

if __name__ == "__main__":
    main()
