# Two commands do all the set-up:  make run  and  make test.  Each builds .venv when it is missing or out of date.
# `make run` leaves the workroom open until Ctrl and C; `make run ONCE=1` stops after drafting.
PYTHON ?= python3
BIN    := .venv/bin
ONCE   ?=

.PHONY: run test check lint types arrows bench lock clean help

help:           ## what there is to make
	@grep -hE '^[a-z]+: .*##|^[a-z]+:.*##' $(MAKEFILE_LIST) | sed -E 's/:.*##/\t/'

run: .venv/product    ## draft the sample child's top, say where the sheets are, then open the workroom (ONCE=1: only draft)
	$(BIN)/littlefold draft casing-top --child sample --out sheets
	@echo "The sheets are in the folder sheets; print casing-top-printer-check.pdf first."
	@if [ -z "$(ONCE)" ]; then exec $(BIN)/littlefold serve; \
	 else echo "To open the workroom in the browser: $(BIN)/littlefold serve"; fi

test: .venv/tests     ## all tests; Debian's Chromium and PostgreSQL are installed for some of them where that can be done
	@sh tools/test_programs.sh
	$(BIN)/python -m pytest -n auto --dist loadgroup -q

check: lint types arrows test   ## what a change must pass

lint: .venv/tests     ## style and dead code
	$(BIN)/ruff check .
	$(BIN)/ruff format --check .

types: .venv/tests    ## types, strictly
	$(BIN)/mypy

arrows: .venv/tests   ## who may import whom
	$(BIN)/lint-imports

bench: .venv/tests    ## measured comparisons (a separate .venv-bench holds the CAD kernel)
	$(BIN)/python -m bench

lock:                 ## write the requirement files anew (needs uv)
	for set in product tests bench; do \
	  uv pip compile --universal --python-version 3.11 --generate-hashes --no-emit-index-url -q \
	    --custom-compile-command "make lock" requirements/$$set.in -o requirements/$$set.txt; done

clean:                ## forget the environment and everything that was made
	rm -rf .venv .venv-bench sheets build

.venv/bin/python:
	$(PYTHON) -m venv .venv

.venv/product: .venv/bin/python requirements/product.txt pyproject.toml
	$(BIN)/pip install --quiet --disable-pip-version-check --require-hashes -r requirements/product.txt
	$(BIN)/pip install --quiet --disable-pip-version-check --no-deps --no-build-isolation -e .
	@touch $@

.venv/tests: .venv/product requirements/tests.txt
	$(BIN)/pip install --quiet --disable-pip-version-check --require-hashes -r requirements/tests.txt
	@touch $@
