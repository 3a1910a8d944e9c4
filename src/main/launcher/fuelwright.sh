#!/bin/sh
# Starts the window sooner: the first run leaves the classes it loaded, prepared, in the user's cache; later runs take them from there.
here=$(cd "$(dirname "$0")" && pwd)
java=${JAVA_HOME:+$JAVA_HOME/bin/}java
cache=${XDG_CACHE_HOME:-$HOME/.cache}/fuelwright
# Prepared classes belong to one jar and one runtime.
key=$({ cat "$here/fuelwright.jar"; ls -l "$here/fuelwright.jar"; "$java" -version 2>&1; } | cksum | cut -d' ' -f1)
archive=$cache/classes-$key.jsa
if [ -f "$archive" ]; then
  prepared=-XX:SharedArchiveFile=$archive
elif mkdir -p "$cache" 2>/dev/null && [ -w "$cache" ]; then
  rm -f "$cache"/classes-*.jsa
  prepared=-XX:ArchiveClassesAtExit=$archive
else
  prepared=-Xshare:auto
fi
exec "$java" "$prepared" -Xlog:disable -Xlog:all=error:stderr -jar "$here/fuelwright.jar" "$@"
