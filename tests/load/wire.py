"""HTTP in as few steps as can be, for clients whose own work would be measured with the server's."""

import json
import re
import socket

LENGTH = re.compile(rb"(?i)content-length: (\d+)")


def connect(address):
    """A line over which small requests go out at once."""
    host, port = address.removeprefix("http://").split(":")
    line = socket.create_connection((host, int(port)))
    line.setsockopt(socket.IPPROTO_TCP, socket.TCP_NODELAY, 1)
    return line


def request(method, path, token, body=None):
    """What somebody who has signed in sends, ready to be sent many times."""
    head = f"{method} {path} HTTP/1.1\r\nHost: tallyhost\r\nAuthorization: Bearer {token}\r\n"
    if body is None:
        return f"{head}\r\n".encode()
    text = json.dumps(body)
    return f"{head}Content-Type: application/json\r\nContent-Length: {len(text)}\r\n\r\n{text}".encode()


def answer(said):
    """Status and body, once all of it is there."""
    head, end, body = said.partition(b"\r\n\r\n")
    if not end or len(body) < int(LENGTH.search(head)[1]):
        return None
    return int(head.split(b" ", 2)[1]), body


def ask(line, request):
    """The body of an answer that is no error."""
    line.sendall(request)
    said = b""
    while (answered := answer(said)) is None:
        more = line.recv(65536)
        assert more, "the server hung up"
        said += more
    status, body = answered
    assert status < 400, f"{status} {body[:2000]}"
    return body
