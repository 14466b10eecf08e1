//! SHA-256 as lower-case hexadecimal, the one digest used everywhere here.

use sha2::{Digest, Sha256};

/// The SHA-256 of some bytes, as 64 lower-case hexadecimal digits.
pub(crate) fn sha256(bytes: &[u8]) -> String {
    hex(&Sha256::digest(bytes))
}

/// The SHA-256 over named digests: each name, a zero byte, its digest, a line feed, in the order
/// given. Used where a set of files needs one name.
pub(crate) fn sha256_of_all<'a>(named: impl IntoIterator<Item = (&'a str, &'a str)>) -> String {
    let mut hasher = Sha256::new();
    for (name, digest) in named {
        hasher.update(name);
        hasher.update([0]);
        hasher.update(digest);
        hasher.update(b"\n");
    }
    hex(&hasher.finalize())
}

fn hex(bytes: &[u8]) -> String {
    bytes.iter().map(|byte| format!("{byte:02x}")).collect()
}

#[cfg(test)]
mod tests {
    use super::sha256;

    /// Expected value: FIPS 180-4 example "abc", NIST Cryptographic Standards and Guidelines,
    /// Secure Hashing example SHA256.
    #[test]
    fn abc_has_the_published_digest() {
        assert_eq!(
            sha256(b"abc"),
            "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"
        );
    }
}
