# Each target sets up all that it needs; the work is done by bootstrap.py, so that Windows can run the same.
PYTHON ?= python3

.PHONY: demo test check bench pictures

demo test check bench pictures:
	@$(PYTHON) bootstrap.py $@ $(ARGS)
