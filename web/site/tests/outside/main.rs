//! The site tool from outside: a server spoken to in bytes, folders made for the purpose.

mod client;
mod finish;
mod folder;
mod freshness;
mod offline;
mod server;
mod size;
