//! Ends a child process with its parent (`prctl(2)`, PR_SET_PDEATHSIG).

use std::process::Command;

/// Lets a child process end with the thread that starts it: it is interrupted when that thread,
/// or the whole process, ends, even by `kill -9`.
///
/// Linux only; elsewhere the child outlives a killed parent and the next start deals with it.
pub fn die_with_this_thread(command: &mut Command) {
    #[cfg(target_os = "linux")]
    {
        use std::os::unix::process::CommandExt;

        use nix::errno::Errno;
        use nix::sys::prctl::set_pdeathsig;
        use nix::sys::signal::Signal;
        use nix::unistd::{Pid, getppid};

        let parent = Pid::this();
        let request_signal = move || {
            set_pdeathsig(Signal::SIGINT)?;
            // The parent may have ended before the line above: then no signal would ever come.
            if getppid() == parent {
                Ok(())
            } else {
                Err(Errno::ESRCH.into())
            }
        };
        // SAFETY: between fork and exec only two system calls are made, and nothing is allocated.
        // The standard library runs this after it changed the user, which would undo the request.
        #[allow(unsafe_code, reason = "only the child itself can ask for the signal")]
        unsafe {
            command.pre_exec(request_signal)
        };
    }
}
