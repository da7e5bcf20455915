//! Builds the program again when a file of the built-in pack is added, changed or taken out.

fn main() {
    println!("cargo::rerun-if-changed=rules");
}
