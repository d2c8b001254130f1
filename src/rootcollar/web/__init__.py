"""Web: the app on this computer, for people who will never open a terminal.

Question: what has the person asked, and how is the answer shown so that every number can be opened?
Inputs: a property's folder, requests from a browser on this computer.
Outputs: pages that read and submit without scripts; the drawer with the working of a number.
Sources: none of its own; it shows the sources of the rooms.
Refuses: any request from another computer, page or user (loopback, Host, a key for each start), and any form above a
bound. It computes no figure: it runs a job and shows what comes back.
"""

from rootcollar.web.app import make_app
from rootcollar.web.desk import Desk
from rootcollar.web.serve import Served, start

__all__ = ["Desk", "Served", "make_app", "start"]
