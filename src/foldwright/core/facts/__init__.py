"""Sourced figures as data, each with its status."""
