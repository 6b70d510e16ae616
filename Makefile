# Each target sets up all that it needs; the work is done by bootstrap.py, so that Windows can run the same.
PYTHON ?= python3

.PHONY: demo test check bench

demo test check bench:
	@$(PYTHON) bootstrap.py $@ $(ARGS)
