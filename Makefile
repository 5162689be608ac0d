# Every target is idempotent and quick the second time. `make help` lists them.
SHELL := /bin/bash
.SHELLFLAGS := -eu -o pipefail -c
.DEFAULT_GOAL := help
.DELETE_ON_ERROR:

B := .venv/bin
# node and npm come from the wheel in .venv: the same version on every machine.
export PATH := $(CURDIR)/$(B):$(PATH)
export LC_ALL := C.UTF-8
export PYTHONUTF8 := 1
export PORT ?= 8000
SEEDS ?= 100
PHONE_SOURCES := $(shell find frontend/src frontend/public -type f 2>/dev/null)
DATABASE_TESTS := tests/logbook tests/sync tests/api tests/members tests/stock tests/batches tests/tracing

.PHONY: help run test lint unit phone python simulation database browser bench demo kinds soak audit lock

help: ## list the commands
	@grep -E '^[a-z-]+:.*## ' Makefile | sed -E 's/^([a-z-]+):.*## /\1\t/' | expand -t 10

run: .venv/ok-run frontend/dist/sw.js ## set everything up and serve the app with the demo cooperative
	@$(B)/python manage.py migrate --verbosity 0
	@exec $(B)/python manage.py serve --demo

# Two at a time, because there are two cores, and each speaks when it has ended. The phone's unit
# tests have the machine to themselves, and the browser's, which press and wait as a hand does.
test: lint phone ## set everything up and run every check and test
	@echo "Python tests, the simulation and PostgreSQL, two at a time: each speaks when it has ended"
	@$(MAKE) --no-print-directory -j2 --output-sync=target python database simulation
	@$(MAKE) --no-print-directory browser

lint: .venv/ok-test frontend/node_modules/.ok ## format, style, types, layers, generated files
	$(B)/ruff format --check .
	$(B)/ruff check .
	$(B)/mypy
	$(B)/lint-imports
	$(B)/python -m kitchenlog.entries.export --check
	$(B)/python -m kitchenlog.calc.export_tables --check
	$(B)/python manage.py makemigrations --check --dry-run --verbosity 0
	cd frontend && npm run -s lint && npm run -s types
	! grep -n '"resolved"' frontend/package-lock.json tests/chromium/package-lock.json
	! grep -n '://' requirements/*.txt

unit: phone python simulation ## unit tests of both languages, the simulation, size budgets

phone: frontend/dist/sw.js ## unit tests of the phone, size budgets
	cd frontend && npm run -s test && npm run -s sizes

python: .venv/ok-test frontend/dist/sw.js ## unit tests in Python, and those that ask both languages
	$(B)/pytest --ignore=tests/e2e --ignore=tests/simulation

simulation: .venv/ok-test frontend/dist-phones/phones.mjs ## phones and server under faults, by seed: SEEDS=100
	KITCHENLOG_SEEDS=$(SEEDS) $(B)/pytest tests/simulation

database: .venv/ok-test ## the database suites again, on PostgreSQL
	KITCHENLOG_TEST_DATABASE=postgresql $(B)/pytest $(DATABASE_TESTS)

browser: .venv/ok-test frontend/dist/sw.js .venv/ok-browser ## the flows in a real browser against a real server
	KL_CHROMIUM=$$(cat .venv/ok-browser) $(B)/pytest tests/e2e

bench: .venv/ok-test frontend/dist/sw.js .venv/ok-browser ## measure speed: ratios within one run, on this machine
	KL_CHROMIUM=$$(cat .venv/ok-browser) $(B)/python -m tests.bench

demo: .venv/ok-run ## load the demo cooperative into a running server at PORT
	$(B)/python manage.py demo --to http://localhost:$(PORT)

kinds: .venv/ok-run ## write the phone's tables and the list of kinds in DEVELOPERS.md
	$(B)/python -m kitchenlog.entries.export
	$(B)/python -m kitchenlog.calc.export_tables

soak: .venv/ok-test frontend/dist-phones/phones.mjs ## the simulation and the twins for longer: SEEDS=1000
	KITCHENLOG_SEEDS=$(SEEDS) KITCHENLOG_SOAK=10000 $(B)/pytest tests/simulation tests/calc/test_twins_agree.py

audit: .venv/ok-test ## ask the registries for known holes in dependencies; says so when they cannot be asked
	cd frontend && npm audit || echo "npm audit could not be asked, or found something: read the lines above."

lock: ## resolve the Python locks anew from pyproject.toml (needs uv on the path)
	uv pip compile -q --universal --python-version 3.11 --no-header --no-annotate --no-emit-index-url \
	  --generate-hashes pyproject.toml -o requirements/run.txt
	uv pip compile -q --universal --python-version 3.11 --no-header --no-annotate --no-emit-index-url \
	  --generate-hashes pyproject.toml --extra test -c requirements/run.txt -o requirements/test.txt

.venv/ok-venv:
	@python3 -c 'import sys; assert sys.version_info >= (3, 11), "kitchenlog needs Python 3.11 or newer"'
	@python3 -m venv .venv || { echo "Python's venv module is missing: apt-get install python3-venv"; exit 1; }
	@touch $@

.venv/ok-run: requirements/run.txt .venv/ok-venv
	@echo "Installing the Python packages"
	@$(B)/pip install -q --disable-pip-version-check --require-hashes -r $<
	@touch $@

.venv/ok-test: requirements/test.txt .venv/ok-run
	@echo "Installing the test tools"
	@$(B)/pip install -q --disable-pip-version-check --require-hashes -r $<
	@touch $@

.venv/ok-browser: tests/chromium/find.py .venv/ok-test
	@$(B)/python tests/chromium/find.py > $@

frontend/node_modules/.ok: frontend/package-lock.json .venv/ok-run
	@echo "Installing the phone's packages"
	@cd frontend && npm ci --ignore-scripts --loglevel=error
	@touch $@

frontend/dist/sw.js: frontend/node_modules/.ok frontend/index.html $(wildcard frontend/*.ts frontend/build/*.ts) $(PHONE_SOURCES)
	@echo "Building the phone's app"
	@cd frontend && npm run -s build
	@$(B)/python -m whitenoise.compress --quiet frontend/dist
	@touch $@

frontend/dist-phones/phones.mjs: frontend/node_modules/.ok $(PHONE_SOURCES) $(wildcard tests/simulation/*.ts)
	@cd frontend && npm run -s phones
	@touch $@
