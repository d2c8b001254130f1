"""Store: a property in one file that any map program opens and that loses nothing.

Question: what lies on this ground, and what has been said and done on it?
Inputs: rows of the ground; drafts of what somebody says; bundles of entries from other devices.
Outputs: one OGC GeoPackage: seven layers that are edited, and a journal that is only added to, each entry sealed and
chained; `Kept`, all of it as of one moment; copies, checked; what the doctor finds.
Sources: OGC GeoPackage 1.3; SQLite with a rollback journal, each change on the disk before it is told as kept.
Refuses: to change or lose an entry, to write over a change it has not seen, to write over any file, to write in a
file of a newer version. It does not know what entries mean; rooms above read them.
"""

from rootcollar.store.amend import AMEND, Wording, amendment, standing
from rootcollar.store.bundle import Bundle, bundle_of, read_bundle, write_bundle
from rootcollar.store.chain import Gap
from rootcollar.store.copies import Restored, backup, restore, send
from rootcollar.store.doctor import Finding, doctor, sound
from rootcollar.store.entry import Draft, Entry
from rootcollar.store.ground import Row
from rootcollar.store.kept import Kept, Store
from rootcollar.store.layers import LAYERS, Column, Layer
from rootcollar.store.new import new_file
from rootcollar.store.private import PRIVATE, Private
from rootcollar.store.project_file import ProjectFile, open_file
from rootcollar.store.schema import SCHEMA
from rootcollar.store.values import Value

__all__ = [
    "Store", "Kept", "Entry", "Draft", "Row", "Value",
    "ProjectFile", "new_file", "open_file", "SCHEMA", "LAYERS", "Layer", "Column",
    "AMEND", "Wording", "amendment", "standing", "Gap", "Bundle", "bundle_of", "read_bundle", "write_bundle",
    "doctor", "sound", "Finding", "backup", "restore", "Restored", "send", "PRIVATE", "Private",
]  # fmt: skip
