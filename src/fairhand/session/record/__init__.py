"""The record of the writer's work: earlier states brought back, and the record printed and checked."""
