//! No file names a folder of somebody's machine or the host of a package registry: both are settings of a machine, not of the project.
//!
//! Cargo's lock file names its registry and is left out; the npm lock file must be written without addresses.

use super::tree::{Fault, TextFile, Tree};

/// Put together from halves, so that this file does not find itself.
const FOLDERS: [&str; 6] = [
    concat!("/wo", "rk/"),
    concat!("/ro", "ot/"),
    concat!("/t", "mp/"),
    concat!("/ho", "me/"),
    concat!("/Us", "ers/"),
    concat!("/fa", "rm/"),
];
const HOSTS: [&str; 6] = [
    concat!("crates", ".io"),
    concat!("py", "pi.org"),
    concat!("python", "hosted.org"),
    concat!("npm", "js."),
    concat!("deb.", "debian"),
    concat!("security.", "debian"),
];

pub(crate) fn faults(tree: &Tree) -> Vec<Fault> {
    let (locks, others): (Vec<_>, Vec<_>) = tree.files.iter().partition(|file| is_lock(file));
    let in_others = others.into_iter().filter(|file| !file.is_vendored()).flat_map(in_file);
    in_others.chain(locks.into_iter().flat_map(in_lock)).collect()
}

fn is_lock(file: &TextFile) -> bool {
    ["Cargo.lock", "package-lock.json"].iter().any(|name| file.path.rsplit('/').next() == Some(name))
}

fn in_file(file: &TextFile) -> Vec<Fault> {
    let found = file.lines().filter_map(|(number, line)| {
        if let Some(folder) = FOLDERS.iter().find(|folder| starts_a_path(line, folder)) {
            return Some(file.fault(
                number,
                format!("`{folder}` is a folder of one machine; write the path from the root of the repository."),
            ));
        }
        let host = HOSTS.iter().find(|host| line.contains(**host))?;
        Some(file.fault(number, format!("`{host}` is the host of a package registry; name the package alone.")))
    });
    found.collect()
}

/// Whether the folder stands there as the start of an absolute path, not inside a longer path or an address.
fn starts_a_path(line: &str, folder: &str) -> bool {
    line.match_indices(folder)
        .any(|(index, _)| !line[..index].ends_with(|before: char| before.is_alphanumeric() || "_.-~}".contains(before)))
}

fn in_lock(file: &TextFile) -> Vec<Fault> {
    let addresses = file.lines().filter(|(_, line)| line.contains("\"resolved\"") && line.contains("://"));
    addresses
        .map(|(number, _)| {
            file.fault(number, "write the lock file without addresses: npm's omit-lockfile-registry-resolved.")
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::super::tree::{places, planted};
    use super::*;

    #[test]
    fn every_folder_and_host_is_found() {
        for word in FOLDERS.iter().chain(&HOSTS) {
            let text = format!("one\nsee {word}x\n");
            let tree = planted(&[("README.md", &text), ("Cargo.lock", &text), ("a/vendor/b.js", &text)]);
            assert_eq!(places(&faults(&tree)), [("README.md", 2)], "{word}");
        }
    }

    #[test]
    fn a_folder_inside_another_path_is_left_alone() {
        let text = format!("src{0}x ./a{0}x {{url}}{0}x https://a.example{0}", FOLDERS[0]);
        assert_eq!(faults(&planted(&[("a.md", &text)])), []);
    }

    #[test]
    fn an_npm_lock_file_holds_no_address() {
        let tree = planted(&[
            ("e2e/package-lock.json", "{\n\"resolved\": \"https://registry.example/a.tgz\"\n}"),
            ("x/package-lock.json", "{\n\"integrity\": \"sha512-a\"\n}"),
        ]);
        assert_eq!(places(&faults(&tree)), [("e2e/package-lock.json", 2)]);
    }
}
