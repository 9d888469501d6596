//! A chart with its pictures, as files beside each other or in one zip. Names inside a zip are taken only where they are plain file
//! names that the chart itself speaks of, and no piece is read beyond its limit, so that a zip from a stranger can do no harm.

use std::fs;
use std::io::{Read, Seek, Write as _};
use std::path::{Path, PathBuf};

use shop::chart::Chart;
use store::{PictureKind, Unfit};
use zip::write::SimpleFileOptions;
use zip::{CompressionMethod, ZipArchive, ZipWriter};

use crate::failure::Failure;

use super::{refused, unreadable};

/// The chart's name inside a zip.
const CHART: &str = "chart.toml";

/// The longest chart that is read, in bytes: a thousand points with long remarks.
const LONGEST_CHART: u64 = 4_000_000;

/// A chart with its pictures.
pub(super) struct Bundle {
    pub(super) text: String,
    pub(super) chart: Chart,
    /// Name and bytes.
    pub(super) pictures: Vec<(String, Vec<u8>)>,
    /// Pictures that the chart names and that are not there.
    pub(super) missing: Vec<String>,
}

impl Bundle {
    /// The bundle of a chart's text, without its pictures yet.
    pub(super) fn of(text: String) -> Result<Self, Failure> {
        Self::read(Path::new(CHART), text)
    }

    /// A chart file with the pictures beside it, or a zip.
    pub(super) fn open(file: &Path) -> Result<Self, Failure> {
        let mut opened = fs::File::open(file).map_err(|error| unreadable(file, &error))?;
        let mut head = [0; 2];
        let is_zip = opened.read_exact(&mut head).is_ok() && &head == b"PK";
        if is_zip {
            opened.rewind().map_err(|error| unreadable(file, &error))?;
            return Self::unzip(file, opened);
        }
        let mut bundle = Self::read(file, super::text_of(file)?)?;
        for name in names(&bundle.chart) {
            match fs::File::open(file.with_file_name(&name)) {
                Ok(picture) => bundle.take(name, picture)?,
                Err(_) => bundle.missing.push(name),
            }
        }
        Ok(bundle)
    }

    /// Writes the bundle: a zip, or the chart with its pictures beside it. Gives the files that were written. Nothing that is there
    /// already is overwritten.
    pub(super) fn write(&self, file: &Path) -> Result<Vec<PathBuf>, Failure> {
        if file.extension().is_some_and(|ending| ending.eq_ignore_ascii_case("zip")) {
            let bytes = self.zip().map_err(|error| Failure::Use(format!("the zip could not be made: {error}")))?;
            return write_new(&[(file.to_owned(), &bytes)]);
        }
        let mut files: Vec<(PathBuf, &[u8])> = vec![(file.to_owned(), self.text.as_bytes())];
        files.extend(self.pictures.iter().map(|(name, bytes)| (file.with_file_name(name), bytes.as_slice())));
        write_new(&files)
    }

    fn read(file: &Path, text: String) -> Result<Self, Failure> {
        let read = Chart::read(&text);
        match read.value {
            Some(chart) => Ok(Self { text, chart, pictures: Vec::new(), missing: Vec::new() }),
            None => Err(refused(file, &text, &read.faults)),
        }
    }

    fn unzip(file: &Path, opened: fs::File) -> Result<Self, Failure> {
        let broken = |_| Failure::Use(format!("{} is no whole zip; export it again", file.display()));
        let mut archive = ZipArchive::new(opened).map_err(broken)?;
        let text = {
            let entry = archive.by_name(CHART).map_err(|_| {
                Failure::Use(format!("{} has no {CHART} in it, so it is no zip of a chart", file.display()))
            })?;
            let mut text = String::new();
            let read = entry.take(LONGEST_CHART + 1).read_to_string(&mut text);
            read.map_err(|_| Failure::Use(format!("{CHART} in {} is no text in UTF-8", file.display())))?;
            if text.len() as u64 > LONGEST_CHART {
                return Err(Failure::Use(format!("{CHART} in {} is longer than any chart", file.display())));
            }
            text
        };
        let mut bundle = Self::read(Path::new(CHART), text)?;
        for name in names(&bundle.chart) {
            match archive.by_name(&name) {
                Ok(entry) => bundle.take(name, entry)?,
                Err(_) => bundle.missing.push(name),
            }
        }
        Ok(bundle)
    }

    /// Takes a picture, unless it is too large or none.
    fn take(&mut self, name: String, from: impl Read) -> Result<(), Failure> {
        let mut bytes = Vec::new();
        let most = store::LARGEST_PICTURE as u64;
        from.take(most + 1)
            .read_to_end(&mut bytes)
            .map_err(|_| Failure::Use(format!("the picture {name} could not be read to its end; look at the file")))?;
        if bytes.len() as u64 > most {
            return Err(Failure::Use(format!(
                "the picture {name} has more than {} MB; make it smaller first",
                most / 1_000_000
            )));
        }
        if PictureKind::of(&bytes).is_none() {
            return Err(Failure::Use(format!("{name} {}", Unfit::Kind)));
        }
        self.pictures.push((name, bytes));
        Ok(())
    }

    fn zip(&self) -> zip::result::ZipResult<Vec<u8>> {
        let mut writer = ZipWriter::new(std::io::Cursor::new(Vec::new()));
        // A fixed date, so that the same chart gives the same bytes.
        let text = SimpleFileOptions::default().compression_method(CompressionMethod::Deflated);
        writer.start_file(CHART, text)?;
        writer.write_all(self.text.as_bytes())?;
        // Pictures are packed already.
        let picture = SimpleFileOptions::default().compression_method(CompressionMethod::Stored);
        for (name, bytes) in &self.pictures {
            writer.start_file(name.as_str(), picture)?;
            writer.write_all(bytes)?;
        }
        Ok(writer.finish()?.into_inner())
    }
}

fn names(chart: &Chart) -> Vec<String> {
    chart.pictures.iter().map(|picture| picture.file.clone()).collect()
}

/// Writes files that are not there yet, all or none.
fn write_new(files: &[(PathBuf, &[u8])]) -> Result<Vec<PathBuf>, Failure> {
    if let Some((there, _)) = files.iter().find(|(file, _)| file.exists()) {
        return Err(Failure::Use(format!(
            "{} is there already and is not overwritten; choose another name",
            there.display()
        )));
    }
    let mut written = Vec::new();
    for (file, bytes) in files {
        if let Err(error) = fs::write(file, bytes) {
            for file in &written {
                let _ = fs::remove_file(file);
            }
            let _ = fs::remove_file(file);
            return Err(Failure::Use(format!(
                "{} could not be written ({error}); nothing was written",
                file.display()
            )));
        }
        written.push(file.clone());
    }
    Ok(written)
}
