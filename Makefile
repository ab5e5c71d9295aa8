# The habits of this house. `make help` lists them. Works with GNU make and a plain sh; everything that is made lies in
# .venv (the tools) and site (the site).

PYTHON ?= python3
VENV := .venv
RUN := $(VENV)/bin/python
INSTALL := $(RUN) -m pip install -qq --no-deps

# Nothing is built on this machine but the package itself: building would fetch build tools that no lock names.
LOCKED := $(INSTALL) --require-hashes --only-binary :all:

export PIP_DISABLE_PIP_VERSION_CHECK := 1
# The theme prints a banner about its successor unless told not to.
export NO_MKDOCS_2_WARNING := 1

# The clock must not change a byte of the site: the time of the last commit, or a fixed one where there is no history.
ifndef SOURCE_DATE_EPOCH
SOURCE_DATE_EPOCH := $(shell git log -1 --format=%ct 2>/dev/null || echo 946684800)
endif
export SOURCE_DATE_EPOCH

# Three stamps: what the site needs, the package itself on top, what tests and tools need on top of that.
RUNNING := $(VENV)/running
INSTALLED := $(VENV)/installed
DEVELOPING := $(VENV)/developing

# An environment whose Python is gone, or that was moved with its folder, is made anew.
ifneq ($(shell $(RUN) -c pass 2>/dev/null && cat $(RUNNING) 2>/dev/null),$(CURDIR))
$(RUNNING): FORCE
endif

# $(call quietly,COMMAND): its words only if it fails.
quietly = @words=$$($(1) 2>&1) || { printf '%s\n' "$$words"; exit 1; }

.DELETE_ON_ERROR:
.PHONY: help site serve test check lint types contracts spelling data bench golden lock clean FORCE

help:
	@echo 'make site    build the site into the folder site'
	@echo 'make serve   show the site while you write, and rebuild it at each change'
	@echo 'make test    all tests, with a real browser'
	@echo 'make check   lint, types, contracts, spelling, data; each can be asked for alone by that name'
	@echo 'make bench   measure reading, building and growing; ONLY=reading (or building, growing) measures one of them'
	@echo 'make golden  write the golden files of the tests anew; read what changed before you keep it'
	@echo 'make lock    renew the lock files from pyproject.toml; UPGRADE=yes takes the newest of everything'
	@echo 'make clean   remove all that was made'

# Not with --quiet: what is not logged is not counted, and --strict would let every warning pass.
site: $(INSTALLED)
	$(call quietly,$(RUN) -m mkdocs build --strict)
	@echo 'The site is built. Open this file in a browser:'
	@echo '  $(CURDIR)/site/index.html'
	@echo 'or run `make serve` and open the address that it prints.'

serve: $(INSTALLED)
	@$(RUN) -m mkdocs serve

test: $(DEVELOPING) $(INSTALLED)
	@$(RUN) tests/chromium.py
	@$(RUN) tests/formatter.py
	@$(RUN) -m pytest $(TESTS)

check: lint types contracts spelling data
	@echo 'Lint, types, contracts, spelling and data: nothing to mend.'

lint: $(DEVELOPING) $(INSTALLED)
	$(call quietly,$(RUN) -m ruff check --output-format concise .)
	$(call quietly,$(RUN) -m ruff format --check .)

types: $(DEVELOPING) $(INSTALLED)
	$(call quietly,$(RUN) -m mypy)

contracts: $(DEVELOPING) $(INSTALLED)
	$(call quietly,$(RUN) -c 'from importlinter.cli import lint_imports_command; lint_imports_command()' --no-logo --no-cache)

spelling: $(DEVELOPING) $(INSTALLED)
	$(call quietly,$(RUN) -m codespell_lib)

data: $(INSTALLED)
	$(call quietly,$(RUN) -m benchsheaf check)

bench: $(INSTALLED)
	@$(RUN) benchmarks/bench.py $(if $(ONLY),--only $(ONLY)) $(if $(PAIRS),--pairs $(PAIRS))

golden: $(DEVELOPING) $(INSTALLED)
	@$(RUN) tests/golden.py

$(RUNNING): requirements.lock
	@$(PYTHON) -c 'import sys; sys.exit(sys.version_info < (3, 11))' 2>/dev/null || { \
	  echo 'Python 3.11 or newer is needed, and "$(PYTHON)" is not that: name yours, for example make PYTHON=python3.12 site' >&2; \
	  exit 1; }
	@$(PYTHON) -c 'import ensurepip, venv' 2>/dev/null || { \
	  echo 'The Python module "venv" is missing; on Debian this brings it: apt-get install python3-venv' >&2; exit 1; }
	@echo 'Preparing $(VENV) from requirements.lock; this takes a minute the first time.'
	@$(PYTHON) -m venv --clear $(VENV)
	@$(LOCKED) -r requirements.lock
	@echo '$(CURDIR)' > $@

$(INSTALLED): $(RUNNING) pyproject.toml
	@$(INSTALL) --no-build-isolation -e .
	@touch $@

# After the package, because two installers at once would trip over each other; but not again because of it.
$(DEVELOPING): $(RUNNING) requirements-dev.lock | $(INSTALLED)
	@echo 'Adding the tools of requirements-dev.lock to $(VENV).'
	@$(LOCKED) -r requirements-dev.lock
	@touch $@

# docopt serves only the command of the library eseries, which the tests do not use, and would have to be built.
LOCK := pip compile --quiet --universal --python-version 3.11 --generate-hashes --no-emit-index-url --no-header --no-annotate \
  --no-emit-package docopt --no-emit-package docopt-subcommands $(if $(UPGRADE),--upgrade) pyproject.toml --extra

lock:
	@set -e; folder=$$(mktemp -d); trap 'rm -rf "$$folder"' EXIT; \
	$(PYTHON) -m venv "$$folder"; \
	"$$folder/bin/python" -m pip install -qq uv; \
	"$$folder/bin/uv" $(LOCK) build -o requirements.lock; \
	"$$folder/bin/uv" $(LOCK) dev -c requirements.lock -o requirements-dev.lock

clean:
	@rm -rf $(VENV) site .site.* dist .mypy_cache .ruff_cache .pytest_cache .hypothesis .import_linter_cache
	@find generator tests -name __pycache__ -type d -prune -exec rm -rf {} +
