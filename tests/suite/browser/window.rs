use std::cell::Cell;
use std::path::Path;
use std::time::{Duration, Instant};

use reqwest::Url;
use serde_json::{Value, json};
use thirtyfour::common::print::{PrintMargins, PrintPage, PrintParameters};
use thirtyfour::prelude::*;

use super::driver::DRIVER;
use crate::harness::{RUNTIME, Server, until};

/// One window of one person, with cookies of its own.
pub struct Window {
    driver: WebDriver,
    address: String,
    pages: Cell<u32>,
    inputs: Cell<u32>,
    begun: Cell<Instant>,
}

/// What somebody did in a window since they began a job.
pub struct Effort {
    /// Pages that were loaded.
    pub pages: u32,
    /// Fields that were filled in, chosen or ticked, and buttons and links that were pressed.
    pub inputs: u32,
    /// On a clock of this machine.
    pub seconds: f64,
}

/// How wide a window is, in CSS pixels.
#[derive(Clone, Copy)]
pub enum Size {
    /// 320 by 640: the narrowest that WCAG 2.2 (1.4.10) asks for.
    Phone,
    /// 1280 by 800.
    Laptop,
}

/// How long words are waited for; a busy machine is slow.
const TIMEOUT: Duration = Duration::from_secs(90);

/// How often they are looked for.
const POLL_INTERVAL: Duration = Duration::from_millis(200);

impl Window {
    /// Opens a window before nothing.
    pub fn open(server: &Server, size: Size) -> Self {
        let mut capabilities = DesiredCapabilities::chrome();
        for argument in [
            "--headless=new",
            "--no-sandbox",
            "--disable-gpu",
            "--disable-dev-shm-usage",
            "--hide-scrollbars",
            "--lang=en",
        ] {
            capabilities.add_arg(argument).unwrap();
        }
        capabilities
            .set("goog:loggingPrefs", json!({ "browser": "ALL" }))
            .unwrap();
        let driver = RUNTIME
            .block_on(WebDriver::new(&DRIVER.url, capabilities))
            .expect("chromium is installed");
        let window = Self {
            driver,
            address: server.address().to_owned(),
            pages: Cell::new(0),
            inputs: Cell::new(0),
            begun: Cell::new(Instant::now()),
        };
        window.resize(size);
        window
    }

    /// Opens a window and signs in as somebody who has an account.
    pub fn of(server: &Server, handle: &str, size: Size) -> Self {
        let window = Self::open(server, size);
        window.sign_in(handle);
        window
    }

    /// Signs in by typing.
    pub fn sign_in(&self, handle: &str) {
        self.go("/sign-in");
        self.fill(
            "E-mail address",
            &format!("{}@example.org", handle.to_lowercase()),
        );
        self.fill("Password", "six lanterns on the ford");
        self.press("Sign in");
        self.reads("My clubs");
    }

    /// A job begins.
    pub fn begin(&self) {
        self.pages.set(0);
        self.inputs.set(0);
        self.begun.set(Instant::now());
    }

    /// What the job has taken so far.
    pub fn effort(&self) -> Effort {
        Effort {
            pages: self.pages.get(),
            inputs: self.inputs.get(),
            seconds: self.begun.get().elapsed().as_secs_f64(),
        }
    }

    fn count(&self, counter: &Cell<u32>) {
        counter.set(counter.get() + 1);
    }

    pub fn resize(&self, size: Size) {
        let (width, height) = match size {
            Size::Phone => (320, 640),
            Size::Laptop => (1280, 800),
        };
        self.devtools(
            "Emulation.setDeviceMetricsOverride",
            json!({ "width": width, "height": height, "deviceScaleFactor": 1, "mobile": false }),
        );
    }

    pub fn theme(&self, theme: &str) {
        let scheme = json!({ "name": "prefers-color-scheme", "value": theme });
        // What is on its way in is not looked at half faded.
        let still = json!({ "name": "prefers-reduced-motion", "value": "reduce" });
        self.devtools(
            "Emulation.setEmulatedMedia",
            json!({ "features": [scheme, still] }),
        );
    }

    pub fn devtools(&self, command: &str, parameters: Value) {
        let sent = RUNTIME.block_on(self.driver.cdp().send_raw(command, parameters));
        sent.unwrap();
    }

    /// Opens a page of the server.
    pub fn go(&self, path: &str) {
        self.count(&self.pages);
        let address = format!("{}{path}", self.address);
        RUNTIME.block_on(self.driver.goto(address)).unwrap();
        self.arrive(path);
    }

    /// Loses every cookie, as when a session ends.
    pub fn forget(&self) {
        RUNTIME.block_on(self.driver.delete_all_cookies()).unwrap();
    }

    /// The path of the page that is shown.
    pub fn path(&self) -> String {
        let url: Url = RUNTIME.block_on(self.driver.current_url()).unwrap();
        url.path().to_owned()
    }

    /// Presses the first button of this name and waits for the page that it leads to.
    pub fn press(&self, name: &str) {
        self.leave_by(&button(name));
    }

    /// The same where the button is on the page: what it does may have been done by the server.
    pub fn press_if_there(&self, name: &str) {
        let found = self.driver.find(By::XPath(button(name)));
        if RUNTIME.block_on(found).is_ok() {
            self.press(name);
        }
    }

    /// Follows the first link of this name and waits for its page.
    pub fn follow(&self, name: &str) {
        self.leave_by(&format!("//a[normalize-space()={}]", quoted(name)));
    }

    /// Follows a link of the page's own matter, not of the bar above it.
    pub fn follow_in_main(&self, name: &str) {
        self.leave_by(&format!("//main//a[normalize-space()={}]", quoted(name)));
    }

    /// Follows the first link whose name begins so.
    pub fn follow_beginning(&self, name: &str) {
        self.leave_by(&format!(
            "//a[starts-with(normalize-space(), {})]",
            quoted(name)
        ));
    }

    /// Presses a button that leads nowhere else.
    pub fn push(&self, name: &str) {
        self.click(&format!("//button[normalize-space()={}]", quoted(name)));
    }

    fn leave_by(&self, xpath: &str) {
        self.leaving(xpath, || self.click(xpath));
    }

    /// Does something and waits for the page that it leads to.
    pub fn leaving(&self, what: &str, step: impl FnOnce()) {
        self.count(&self.pages);
        self.ask("window.old = true");
        step();
        self.arrive(what);
    }

    /// Waits until another page is there and shows something (W3C Paint Timing): a browser drops
    /// what is pressed before.
    fn arrive(&self, by: &str) {
        let script = "return !window.old && document.readyState === 'complete'
            && performance.getEntriesByName('first-contentful-paint').length > 0";
        let arrived = || RUNTIME.block_on(self.driver.execute(script, Vec::new()));
        until(&format!("{by} leads somewhere"), || {
            arrived().is_ok_and(|answer| answer.json() == &json!(true))
        });
    }

    /// Opens the first folded part whose name begins so.
    pub fn unfold(&self, name: &str) {
        self.click(&format!(
            "//details[not(@open)]/summary[starts-with(normalize-space(), {})]",
            quoted(name)
        ));
    }

    /// Types into the field of this label, in the place of what stands there.
    pub fn fill(&self, label: &str, text: &str) {
        self.count(&self.inputs);
        let field = self.field(label);
        RUNTIME.block_on(async {
            field.clear().await.unwrap();
            field.send_keys(text).await.unwrap();
        });
    }

    /// Puts a value into a field that is not typed into, such as a date, or that is long.
    pub fn set(&self, label: &str, value: &str) {
        self.count(&self.inputs);
        let field = self.field(label);
        let script = "arguments[0].value = arguments[1];
            arguments[0].dispatchEvent(new Event('change', { bubbles: true }))";
        let arguments = vec![field.to_json().unwrap(), json!(value)];
        RUNTIME
            .block_on(self.driver.execute(script, arguments))
            .unwrap();
    }

    /// Chooses a file of this machine in the field of this label.
    pub fn attach(&self, label: &str, file: &Path) {
        let field = self.field(label);
        let path = file.to_str().unwrap();
        RUNTIME.block_on(field.send_keys(path)).unwrap();
    }

    /// Types the same into every field of this label, in the place of what stands there.
    pub fn type_into_all(&self, label: &str, text: &str) {
        let xpath = format!(
            "//input[@id=//label[normalize-space()={}]/@for]",
            quoted(label)
        );
        RUNTIME.block_on(async {
            for field in self.driver.find_all(By::XPath(xpath)).await.unwrap() {
                self.count(&self.inputs);
                field.clear().await.unwrap();
                field.send_keys(text).await.unwrap();
            }
        });
    }

    /// What stands in the field of this label.
    pub fn value(&self, label: &str) -> String {
        let field = self.field(label);
        let value = RUNTIME.block_on(field.value()).unwrap();
        value.unwrap_or_default()
    }

    /// Chooses from the list of this label by the beginning of the choice.
    pub fn choose(&self, label: &str, choice: &str) {
        let id = self.id_for(label);
        self.click(&format!(
            "//select[@id={}]//option[starts-with(normalize-space(), {})]",
            quoted(&id),
            quoted(choice)
        ));
    }

    /// Chooses from the list that is about these two players.
    pub fn choose_about(&self, pair: [&str; 2], choice: &str) {
        let [one, other] = pair.map(quoted);
        self.click(&format!(
            "//select[contains(@aria-label, {one}) and contains(@aria-label, {other})]\
             //option[normalize-space()={}]",
            quoted(choice)
        ));
    }

    /// Chooses the last choice of the first list in the group whose name begins so.
    pub fn choose_last(&self, group: &str) {
        let group = format!(
            "//fieldset[starts-with(normalize-space(legend), {})]",
            quoted(group)
        );
        self.click(&format!("({group}//select)[1]/option[last()]"));
    }

    /// Ticks or unticks the box of this label.
    pub fn tick(&self, label: &str) {
        self.click(&format!(
            "//label[normalize-space()={}]/input",
            quoted(label)
        ));
    }

    /// What a reader can read in the main part of the page.
    pub fn text(&self) -> String {
        let text = self.ask("return document.getElementById('main')?.innerText ?? ''");
        text.as_str().unwrap_or_default().to_owned()
    }

    /// Waits until the page reads so: another page may be on its way, or the script at work.
    pub fn reads(&self, words: &str) {
        let xpath = format!("//main[contains(normalize-space(), {})]", quoted(words));
        let query = self.driver.query(By::XPath(xpath));
        let found = RUNTIME.block_on(query.wait(TIMEOUT, POLL_INTERVAL).first());
        assert!(found.is_ok(), "{words:?} is not on {}", self.path());
    }

    /// The answer of a script in the page.
    pub fn ask(&self, script: &str) -> Value {
        let answer = RUNTIME
            .block_on(self.driver.execute(script, Vec::new()))
            .unwrap();
        answer.json().clone()
    }

    /// The answer of a script that calls its last argument.
    pub fn ask_later(&self, script: &str) -> Value {
        let answer = RUNTIME
            .block_on(self.driver.execute_async(script, Vec::new()))
            .unwrap();
        answer.json().clone()
    }

    /// What the browser complained about since it was asked last: errors of scripts, whatever the
    /// policy of contents stopped, files that are missing. That a form was refused, or a server was
    /// away, is the matter of the test.
    pub fn complaints(&self) -> Vec<String> {
        let expected = |message: &str| {
            ["status of 4", "net::ERR_"]
                .iter()
                .any(|part| message.contains(part) && !message.contains("/static/"))
        };
        let log = RUNTIME.block_on(self.driver.browser_log()).unwrap();
        log.into_iter()
            .filter(|entry| entry.level == "SEVERE" || entry.level == "WARNING")
            .map(|entry| entry.message)
            .filter(|message| !expected(message))
            .collect()
    }

    /// The whole page as a picture.
    pub fn picture(&self) -> Vec<u8> {
        RUNTIME.block_on(self.driver.screenshot_as_png()).unwrap()
    }

    /// Has no page of this window run a script from now on.
    pub fn without_scripts(&self) {
        let switch = json!({ "value": true });
        self.devtools("Emulation.setScriptExecutionDisabled", switch);
    }

    /// The page as it would be printed, as a document.
    pub fn print(&self) -> Vec<u8> {
        let parameters = PrintParameters {
            // A4, with the margins that the stylesheet asks for.
            page: PrintPage {
                width: 21.0,
                height: 29.7,
            },
            margin: PrintMargins {
                top: 1.2,
                bottom: 1.2,
                left: 1.2,
                right: 1.2,
            },
            shrink_to_fit: false,
            ..PrintParameters::default()
        };
        RUNTIME
            .block_on(self.driver.print_page(parameters))
            .unwrap()
    }

    fn click(&self, xpath: &str) {
        self.count(&self.inputs);
        RUNTIME.block_on(async {
            let found = self.driver.find(By::XPath(xpath)).await;
            let element = found.unwrap_or_else(|_| panic!("{xpath} is not on the page"));
            element.scroll_into_view().await.unwrap();
            element.click().await.unwrap();
        });
    }

    fn field(&self, label: &str) -> WebElement {
        let id = self.id_for(label);
        RUNTIME.block_on(self.driver.find(By::Id(id))).unwrap()
    }

    fn id_for(&self, label: &str) -> String {
        let xpath = format!("//label[normalize-space()={}]{UNFOLDED}", quoted(label));
        RUNTIME.block_on(async {
            let found = self.driver.find(By::XPath(xpath)).await;
            let element = found.unwrap_or_else(|_| panic!("no field is called {label:?}"));
            element.attr("for").await.unwrap().unwrap()
        })
    }
}

impl Drop for Window {
    fn drop(&mut self) {
        if std::thread::panicking() {
            eprintln!(
                "-- the page that was shown --\n{}\n{}",
                self.path(),
                self.text()
            );
        }
        let complaints = if std::thread::panicking() {
            Vec::new()
        } else {
            self.complaints()
        };
        let _ = RUNTIME.block_on(self.driver.clone().quit());
        assert!(complaints.is_empty(), "\n{}\n", complaints.join("\n"));
    }
}

/// Not in a part that is folded.
const UNFOLDED: &str = "[not(ancestor::details[not(@open)])]";

fn button(name: &str) -> String {
    format!(
        "//button[not(@hidden)][normalize-space()={}]{UNFOLDED}",
        quoted(name)
    )
}

fn quoted(text: &str) -> String {
    assert!(!text.contains('"'));
    format!("\"{text}\"")
}
