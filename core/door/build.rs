//! Writes down the guide's records once more, for `uniffi::remote` to make their way across: out of the guide's own source,
//! so that none is forgotten and none says another thing.

use std::error::Error;
use std::path::Path;
use std::{env, fs};

use quote::{ToTokens, quote};
use syn::{Attribute, Expr, ExprLit, Fields, Item, Lit, Meta, Visibility, parse_quote};

/// Where the guide says what it shows and takes.
const SHOWN: &str = "../guide/src/screen";
const TAKEN: &str = "../guide/src/deed.rs";

/// How a key says what it asks for: the shells get it as a `Need`.
const NOT_SHOWN: [&str; 1] = ["FileAsked"];

fn main() -> Result<(), Box<dyn Error>> {
    println!("cargo::rerun-if-changed=build.rs");
    println!("cargo::rerun-if-changed={SHOWN}");
    println!("cargo::rerun-if-changed={TAKEN}");
    let mut files = vec![Path::new(TAKEN).to_owned()];
    for entry in fs::read_dir(SHOWN)? {
        files.push(entry?.path());
    }
    files.sort();
    let mut written = String::new();
    for file in files {
        for item in syn::parse_file(&fs::read_to_string(&file)?)?.items {
            written.extend(mirrored(item).into_iter().chain(["\n".into()]));
        }
    }
    fs::write(Path::new(&env::var("OUT_DIR")?).join("shown.rs"), written)?;
    Ok(())
}

/// A record or enum of plain data, as `uniffi::remote` takes it; nothing for what no shell gets.
fn mirrored(item: Item) -> Option<String> {
    let is_shown = |seen: &Visibility, name: &syn::Ident, generics: &syn::Generics| {
        matches!(seen, Visibility::Public(_))
            && generics.params.is_empty()
            && !NOT_SHOWN.iter().any(|not| name == not)
    };
    let (head, item) = match item {
        Item::Struct(mut record) if is_shown(&record.vis, &record.ident, &record.generics) => {
            say_plainly(&mut record.attrs);
            record.fields.iter_mut().for_each(|field| say_plainly(&mut field.attrs));
            (quote!(#[uniffi::remote(Record)]), record.into_token_stream())
        }
        Item::Enum(mut kinds) if is_shown(&kinds.vis, &kinds.ident, &kinds.generics) => {
            say_plainly(&mut kinds.attrs);
            for kind in &mut kinds.variants {
                say_plainly(&mut kind.attrs);
                let is_bare = matches!(kind.fields, Fields::Unnamed(_));
                for field in &mut kind.fields {
                    say_plainly(&mut field.attrs);
                    if is_bare {
                        field.attrs.push(parse_quote!(#[uniffi(name = "block")]));
                    }
                }
            }
            (quote!(#[uniffi::remote(Enum)]), kinds.into_token_stream())
        }
        _ => return None,
    };
    Some(quote!(#head #item).to_string())
}

/// Leaves what is said of it, without links: they lead nowhere in the other languages.
fn say_plainly(attributes: &mut Vec<Attribute>) {
    attributes.retain(|attribute| attribute.path().is_ident("doc"));
    for attribute in attributes {
        let Meta::NameValue(doc) = &mut attribute.meta else { continue };
        if let Expr::Lit(ExprLit { lit: Lit::Str(said), .. }) = &mut doc.value {
            *said = syn::LitStr::new(&without_links(&said.value()), said.span());
        }
    }
}

/// A line of documentation with each "[`name`](path)" or "[`name`]" as "`name`".
fn without_links(line: &str) -> String {
    let Some((before, rest)) = line.split_once("[`") else { return line.into() };
    let Some((name, rest)) = rest.split_once("`]") else { return line.into() };
    let rest = rest.strip_prefix('(').and_then(|path| path.split_once(')')).map_or(rest, |(_, rest)| rest);
    format!("{before}`{name}`{}", without_links(rest))
}
