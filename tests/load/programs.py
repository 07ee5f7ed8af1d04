"""The programs that a measurement needs, each on the loopback and ended by its own id."""

import gzip
import os
import re
import resource
import shutil
import signal
import subprocess
import sys
import tempfile
import time
from contextlib import contextmanager
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
BINARY = ROOT / os.environ.get("CARGO_TARGET_DIR", "target") / "release" / "tallyhost"
# Two threads or workers for whoever serves: the machine that the bars were set on has two cores.
THREADS = 2
CONNECTIONS = 64


# Whoever is told to end ends what it has started, too.
signal.signal(signal.SIGTERM, lambda *_: sys.exit("told to end"))


@contextmanager
def folder():
    """A folder that every user may pass through, as a data folder must be; removed at the end."""
    path = Path(tempfile.mkdtemp(prefix="tallyhost-load-"))
    path.chmod(0o711)
    try:
        yield path
    finally:
        shutil.rmtree(path, ignore_errors=True)


@contextmanager
def running(command, **options):
    """A program that is asked to end, and waited for, at the end."""
    process = subprocess.Popen([str(word) for word in command], **options)
    try:
        yield process
    finally:
        process.send_signal(signal.SIGTERM)
        process.wait(timeout=60)


class Tallyhost:
    """A server with its own database in a data folder."""

    def __init__(self, process, data, started):
        self.process = process
        self.data = data
        first = process.stdout.readline()
        assert first.startswith("listening on "), "the server did not start"
        self.address = first.removeprefix("listening on ").strip()
        self.seconds_to_listen = time.monotonic() - started

    def database(self):
        """Where libpq finds its database."""
        socket = next(self.data.glob("**/.s.PGSQL.*"), None)
        assert socket, "no database socket in the data folder"
        return f"host={socket.parent} user=tallyhost dbname=tallyhost"

    def memory(self):
        """Resident memory in KiB: now, and at most so far."""
        status = Path(f"/proc/{self.process.pid}/status").read_text()
        return tuple(int(re.search(rf"{name}:\s+(\d+) kB", status)[1]) for name in ("VmRSS", "VmHWM"))


@contextmanager
def tallyhost(data, *arguments):
    """The release binary. One address plays all people, so its changes are not limited."""
    command = [BINARY, "serve", "--listen", "127.0.0.1:0", "--data", data, "--workers", THREADS]
    command += ["--changes-per-second", "100000", *arguments]
    started = time.monotonic()
    with running(command, stdout=subprocess.PIPE, text=True) as process:
        yield Tallyhost(process, data, started)


NGINX = """
worker_processes {threads};
pid {folder}/nginx.pid;
error_log {folder}/error.log;
events {{ worker_connections 1024; }}
http {{
    types {{ application/json json; }}
    access_log off;
    sendfile on;
    tcp_nopush on;
    keepalive_requests 100000000;
    open_file_cache max=16;
    gzip_static on;
    client_body_temp_path {folder}/body;
    proxy_temp_path {folder}/proxy;
    fastcgi_temp_path {folder}/fastcgi;
    uwsgi_temp_path {folder}/uwsgi;
    scgi_temp_path {folder}/scgi;
    server {{
        listen 127.0.0.1:{port};
        root {folder}/files;
        add_header Cache-Control no-cache;
    }}
}}
"""


@contextmanager
def nginx(folder, port, body):
    """Serves a body as a file, and as one that was compressed before; the address of it."""
    files = folder / "files"
    files.mkdir()
    files.chmod(0o755)
    (files / "standings.json").write_bytes(body)
    (files / "standings.json.gz").write_bytes(gzip.compress(body, 6))
    configuration = folder / "nginx.conf"
    configuration.write_text(NGINX.format(threads=THREADS, folder=folder, port=port))
    with running(["nginx", "-c", configuration, "-p", folder, "-g", "daemon off;"]):
        yield f"http://127.0.0.1:{port}/standings.json"


def wrk(url, seconds, headers=(), script=None):
    """Requests per second and the 99th percentile in milliseconds; no answer may be an error."""
    command = ["wrk", "-t1", f"-c{CONNECTIONS}", f"-d{seconds}s", "--latency"]
    for name, value in dict(headers).items():
        command += ["-H", f"{name}: {value}"]
    if script:
        command += ["-s", str(script)]
    said = subprocess.run(command + [url], check=True, capture_output=True, text=True).stdout
    assert "Non-2xx" not in said and "Socket errors" not in said, said
    rate = float(re.search(r"Requests/sec:\s+([\d.]+)", said)[1])
    number, unit = re.search(r"99%\s+([\d.]+)(us|ms|s)\b", said).groups()
    return rate, float(number) * {"us": 0.001, "ms": 1.0, "s": 1000.0}[unit]


def allow_many_files():
    """As many open files as the system lets this process and its children have."""
    _, most = resource.getrlimit(resource.RLIMIT_NOFILE)
    resource.setrlimit(resource.RLIMIT_NOFILE, (most, most))
    return most
