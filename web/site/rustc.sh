#!/bin/sh
# The compiler, told to write nowhere into the page where on this machine its sources lie: the same
# sources must give the same bytes everywhere, and dist/ is published. Cargo calls it as
# .cargo/config.toml says; what is not for the page goes through untouched.
case " $* " in
*" wasm32-unknown-unknown "*) ;;
*) exec "$@" ;;
esac

cargo=${CARGO_HOME:-$HOME/.cargo}
project=$(cd "$(dirname "$0")/../.." && pwd)
# With the library's sources installed, their place stands where a fixed name would.
library=$("$1" --print sysroot)/lib/rustlib/src/rust
if [ -d "$library" ]; then
    commit=$("$1" -vV | sed -n 's/^commit-hash: //p')
    set -- "$@" "--remap-path-prefix=$library=/rustc/$commit"
fi
# The last rule that fits is the one that is applied, so the special ones come last.
set -- "$@" "--remap-path-prefix=$cargo=cargo" "--remap-path-prefix=$project=pitchline"
for registry in "$cargo"/registry/src/*; do
    set -- "$@" "--remap-path-prefix=$registry=crate"
done
exec "$@"
