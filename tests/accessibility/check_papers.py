#!/usr/bin/env python3
"""Opens every HTML paper in a real browser and holds it against axe-core, the open accessibility rules.

Usage: check_papers.py FOLDER...   (folders with .html papers)

axe-core comes from the npm registry into a temporary folder; nothing of it is kept. Without a browser,
npm or the registry the check is skipped, and says so; then the exit code is 77.
"""
import glob
import html
import json
import os
import re
import shutil
import subprocess
import sys
import tarfile
import tempfile

SKIPPED = 77


def skip(why):
    print(f"SKIPPED: accessibility of the papers was not checked: {why}")
    sys.exit(SKIPPED)


def fetch_axe(folder):
    if not shutil.which("npm"):
        skip("npm is not installed")
    packed = subprocess.run(["npm", "pack", "axe-core@4", "--silent"], cwd=folder, capture_output=True, text=True,
                            timeout=120)
    archives = glob.glob(os.path.join(folder, "axe-core-*.tgz"))
    if packed.returncode != 0 or not archives:
        skip("axe-core cannot be fetched")
    with tarfile.open(archives[0]) as archive:
        return archive.extractfile("package/axe.min.js").read().decode("utf-8")


def violations(browser, axe, path, folder):
    with open(path, encoding="utf-8") as file:
        page = file.read()
    run = ("axe.run(document,{resultTypes:['violations']}).then(function(r){var p=document.createElement('pre');"
           "p.id='axe-result';p.textContent=JSON.stringify(r.violations.map(function(v){return {id:v.id,"
           "impact:v.impact,help:v.help,nodes:v.nodes.map(function(n){return n.html})}}));"
           "document.body.appendChild(p)})")
    page = page.replace("</body>", f"<script>{axe}</script><script>{run}</script></body>")
    copy = os.path.join(folder, "page.html")
    with open(copy, "w", encoding="utf-8") as file:
        file.write(page)
    shown = subprocess.run([browser, "--headless", "--no-sandbox", "--disable-gpu", "--window-size=1000,1400",
                            f"--user-data-dir={folder}/profile", "--virtual-time-budget=20000", "--dump-dom",
                            "file://" + copy], capture_output=True, text=True, timeout=180)
    found = re.search(r'<pre id="axe-result">(.*?)</pre>', shown.stdout, re.S)
    if not found:
        print(f"{path}: the browser gave no result\n{shown.stderr[-500:]}")
        return None
    return json.loads(html.unescape(found.group(1)))


def main():
    browser = shutil.which("chromium") or shutil.which("chromium-browser")
    if not browser:
        skip("chromium is not installed")
    papers = [path for folder in sys.argv[1:] for path in sorted(glob.glob(os.path.join(folder, "*.html")))]
    if not papers:
        print("no .html papers there; name a folder with papers")
        return 2
    bad = 0
    with tempfile.TemporaryDirectory() as folder:
        axe = fetch_axe(folder)
        for path in papers:
            result = violations(browser, axe, path, folder)
            if result is None or result:
                bad += 1
            for one in result or []:
                print(f"{path}: {one['id']} ({one['impact']}): {one['help']}")
                for node in one["nodes"][:3]:
                    print("    " + node[:160])
    print(f"{len(papers)} papers, {bad} with violations")
    return 1 if bad else 0


if __name__ == "__main__":
    sys.exit(main())
