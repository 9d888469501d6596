//! A table of check values has its eight columns, and every row an id of its own, a source and a known kind.

use super::tree::{Fault, TextFile, Tree};

const COLUMNS: [&str; 8] = ["id", "quantity", "inputs", "expected", "unit", "tolerance", "source", "kind"];
const KINDS: [&str; 5] = ["published", "reference-library", "own-numerical-solution", "common-practice", "from-memory"];

pub(crate) fn faults(tree: &Tree) -> Vec<Fault> {
    let tables = tree
        .with_extension("csv")
        .filter(|file| file.path.strip_prefix("reference/").is_some_and(|name| !name.contains('/')));
    tables.flat_map(in_table).collect()
}

fn in_table(file: &TextFile) -> Vec<Fault> {
    let mut reader = csv::Reader::from_reader(file.text.as_bytes());
    match reader.headers() {
        Ok(headers) if headers.iter().eq(COLUMNS) => {}
        _ => return vec![file.fault(1, format!("the columns are: {}.", COLUMNS.join(", ")))],
    }
    let mut faults = vec![];
    let mut seen: Vec<String> = vec![];
    for row in reader.records() {
        match row {
            Ok(row) => {
                let line = row.position().map_or(1, |position| position.line() as usize);
                faults.extend(in_row(&row, &seen).map(|says| file.fault(line, says)));
                seen.push(row[0].to_owned());
            }
            Err(error) => {
                let line = error.position().map_or(1, |position| position.line() as usize);
                faults.push(file.fault(line, format!("this row cannot be read: {error}.")));
            }
        }
    }
    if seen.is_empty() {
        faults.push(file.fault(1, "the table holds no row; fill it or drop the file."));
    }
    faults
}

/// The reader has already made sure that a row has as many cells as there are columns.
fn in_row(row: &csv::StringRecord, seen: &[String]) -> impl Iterator<Item = String> {
    let empty = COLUMNS.iter().zip(row).filter(|(_, cell)| cell.trim().is_empty());
    let mut says: Vec<String> =
        empty.map(|(column, _)| format!("`{column}` is empty; every column is filled.")).collect();
    if seen.iter().any(|id| *id == row[0]) {
        says.push(format!("the id `{}` stands twice; give each row its own.", &row[0]));
    }
    if !KINDS.contains(&&row[7]) {
        says.push(format!("`{}` is no kind; the kinds are: {}.", &row[7], KINDS.join(", ")));
    }
    says.into_iter()
}

#[cfg(test)]
mod tests {
    use super::super::tree::{places, planted};
    use super::*;

    const HEAD: &str = "id,quantity,inputs,expected,unit,tolerance,source,kind\n";

    #[track_caller]
    fn check(body: &str, lines: &[usize]) {
        let text = format!("{HEAD}{body}");
        let found = faults(&planted(&[("reference/a.csv", &text)]));
        assert_eq!(found.iter().map(|fault| fault.line).collect::<Vec<_>>(), lines, "{found:?}");
    }

    #[test]
    fn a_row_needs_a_source_and_a_known_kind() {
        check("a,q,x=1,2,mm,exact,\"Book, page 3\",published\n", &[]);
        check("a,q,x=1,2,mm,exact,,published\n", &[2]);
        check("a,q,x=1,2,mm,exact,Book,published\nb,q,x=1,2,mm,exact,Book,verified\n", &[3]);
    }

    #[test]
    fn a_row_is_whole_and_its_id_its_own() {
        check("a,q,x=1,2,mm,exact,Book\n", &[2, 1]);
        check("a,q,x=1,2,mm,exact,Book,published\na,q,x=2,3,mm,exact,Book,published\n", &[3]);
        check("", &[1]);
    }

    #[test]
    fn other_columns_are_a_fault_and_other_folders_are_not() {
        let tree =
            planted(&[("reference/a.csv", "id,value\n"), ("reference/crosscheck/b.csv", "x\n"), ("demo/c.csv", "x\n")]);
        assert_eq!(places(&faults(&tree)), [("reference/a.csv", 1)]);
    }
}
