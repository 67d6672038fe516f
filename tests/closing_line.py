"""Prints the closing line of a test run from ctest's JUnit file, skipped tests counted."""
import sys
import xml.etree.ElementTree as tree

suite = tree.parse(sys.argv[1]).getroot()
total = int(suite.get("tests", 0))
failed = int(suite.get("failures", 0))
skipped = int(suite.get("skipped", 0)) + int(suite.get("disabled", 0))
print(f"{total - failed - skipped} passed, {failed} failed, {skipped} skipped")
