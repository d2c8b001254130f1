"""The pages, a module each: every one reads the desk, runs a job, and hands plain values to its template."""

from __future__ import annotations

from fastapi import APIRouter

from rootcollar.web.pages import (
    choose,
    count,
    door,
    facts,
    figure,
    ground,
    plans,
    prepare,
    shelf,
    shelf_edit,
    shelf_second,
    start,
    style,
)

__all__ = ["ROUTERS"]

ROUTERS: tuple[APIRouter, ...] = (
    plans.router, choose.router, count.router, door.router, facts.router, figure.router, ground.router, prepare.router,
    shelf_edit.router, shelf_second.router, shelf.router, start.router, style.router,
)  # fmt: skip
