// The line to the program: what is sent is always the newest, one message at a time, and a
// line that breaks is picked up again.

const about = name => document.querySelector(`meta[name="hingeline-${name}"]`).content;

/** How long an answer may take before the next message is sent all the same, in milliseconds. */
const patience = 3000;

export class Link {
  #token = about("token");
  #socket = null;
  #waiting = 0; // since when an answer is awaited; 0 for none
  #newer = false; // something has changed since the last message
  #slow = false; // an answer is overdue
  #number = 0;
  #wait = 250;
  #message; #heard; #changed;

  /** message makes what is sent; heard gets what comes; changed is told "open", "slow", "lost" or "newer". */
  constructor(message, heard, changed) {
    this.#message = message;
    this.#heard = heard;
    this.#changed = changed;
    this.#connect();
    setInterval(() => this.#miss(), 500);
  }

  /** Something has changed: send it as soon as the last message was answered. */
  send() {
    this.#newer = true;
    this.#pump();
  }

  // No answer has come: what is seen may be old, so say so, and ask again.
  #miss() {
    if (!this.#waiting || performance.now() - this.#waiting <= patience) return;
    this.#waiting = 0;
    this.#newer = true;
    this.#slow = true;
    this.#changed("slow");
    this.#pump();
  }

  #pump() {
    if (!this.#newer || this.#waiting || this.#socket?.readyState !== WebSocket.OPEN) return;
    const message = this.#message();
    if (!message) return;
    this.#newer = false;
    this.#waiting = performance.now();
    this.#socket.send(JSON.stringify({ number: ++this.#number, ...message }));
  }

  #connect() {
    const socket = new WebSocket(`ws://${location.host}/socket/${this.#token}`);
    this.#socket = socket;
    socket.onopen = () => { this.#wait = 250; this.#waiting = 0; this.#changed("open"); };
    socket.onmessage = event => {
      const message = JSON.parse(event.data);
      if (message.kind === "answer") {
        this.#waiting = 0;
        if (this.#slow) this.#changed("open");
        this.#slow = false;
      }
      if (message.kind === "layout") { this.#waiting = 0; this.#newer = true; }
      this.#heard(message);
      this.#pump();
    };
    socket.onclose = () => {
      this.#waiting = 0;
      this.#slow = false;
      this.#changed("lost");
      setTimeout(() => this.#again(), this.#wait);
      this.#wait = Math.min(this.#wait * 1.5, 2000);
    };
  }

  // After a restart the program knows another token, which the page that it gives out has.
  async #again() {
    try {
      const answer = await fetch("/", { cache: "no-store" });
      const page = new DOMParser().parseFromString(await answer.text(), "text/html");
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
