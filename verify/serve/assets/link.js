// The line to the program, which is picked up again when it breaks.

const about = name => document.querySelector(`meta[name="hingeline-${name}"]`).content;

/** A line: heard gets what comes; changed is told "open", "lost" or "newer". */
export class Line {
  #token = about("token");
  #socket = null;
  #wait = 250;
  #path; #heard; #changed;

  constructor(path, heard, changed) {
    this.#path = path;
    this.#heard = heard;
    this.#changed = changed;
    this.#connect();
  }

  get open() { return this.#socket?.readyState === WebSocket.OPEN; }

  send(message) { this.#socket.send(JSON.stringify(message)); }

  #connect() {
    const socket = new WebSocket(`ws://${location.host}${this.#path}${this.#token}`);
    this.#socket = socket;
    socket.onopen = () => { this.#wait = 250; this.#changed("open"); };
    socket.onmessage = event => this.#heard(JSON.parse(event.data));
    socket.onclose = () => {
      this.#changed("lost");
      setTimeout(() => this.#again(), this.#wait);
      this.#wait = Math.min(this.#wait * 1.5, 2000);
    };
  }

  // After a restart the program knows another token, which the page that it gives out has;
  // or it asks for a code.
  async #again() {
    try {
      const answer = await fetch(location.pathname, { cache: "no-store" });
      const page = new DOMParser().parseFromString(await answer.text(), "text/html");
      if (page.querySelector('meta[name="hingeline-enter"]')) return location.reload();
      const token = page.querySelector('meta[name="hingeline-token"]')?.content;
      if (!answer.ok || !token) throw new Error("no page");
      if (page.querySelector('meta[name="hingeline-build"]').content !== about("build")) return this.#changed("newer");
      this.#token = token;
      this.#connect();
    } catch {
      setTimeout(() => this.#again(), this.#wait);
      this.#wait = Math.min(this.#wait * 1.5, 2000);
    }
  }
}

/** How long an answer may take before the next message is sent all the same, in milliseconds. */
const patience = 3000;

/** How long what is seen may be older than the controls before it is said so, in milliseconds: less is seen as at once. */
const unseen = 200;

/** A line on which what is sent is always the newest, one message at a time. */
export class Link {
  #line;
  #waiting = 0; // since when an answer is awaited; 0 for none
  #newer = false; // something has changed since the last message
  #slow = false; // an answer is overdue
  #number = 0;
  #late = 0; // the timer until what is seen is said to be older than the controls; 0 while it is not
  #message; #changed; #behind;

  /**
   * message makes what is sent; changed is also told "slow" when an answer is overdue, and
   * behind whether what is seen is older than what was sent, or is still to be.
   */
  constructor(message, heard, changed, behind) {
    this.#message = message;
    this.#changed = changed;
    this.#behind = behind;
    this.#line = new Line("/socket/", m => {
      const newest = m.kind === "answer" && m.number === this.#number; // one that was given up may come after all
      if (newest) {
        this.#waiting = 0;
        if (this.#slow) changed("open");
        this.#slow = false;
      }
      if (m.kind === "layout") { this.#waiting = 0; this.#newer = true; }
      heard(m);
      if (newest && !this.#newer) this.#caughtUp();
      this.#pump();
    }, state => { this.#waiting = 0; this.#slow = false; changed(state); });
    setInterval(() => this.#miss(), 500);
  }

  // No answer has come: what is seen may be old, so say so, and ask again.
  #miss() {
    if (!this.#waiting || performance.now() - this.#waiting <= patience) return;
    this.#waiting = 0;
    this.#newer = this.#slow = true;
    this.#changed("slow");
    this.#pump();
  }

  /** Something has changed: send it as soon as the last message was answered. */
  send() {
    this.#newer = true;
    this.#late ||= setTimeout(() => this.#behind(true), unseen);
    this.#pump();
  }

  #caughtUp() {
    clearTimeout(this.#late);
    this.#late = 0;
    this.#behind(false);
  }

  #pump() {
    if (!this.#newer || this.#waiting || !this.#line?.open) return;
    const message = this.#message();
    if (!message) return;
    this.#newer = false;
    this.#waiting = performance.now();
    this.#line.send({ number: ++this.#number, ...message });
  }
}
