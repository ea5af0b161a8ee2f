using System.Globalization;
using CsvHelper;
using CsvHelper.Configuration;

namespace Logbook.Plant;

/// <summary>One row of a file of readings, as text. Empty cells are null.</summary>
public sealed record CsvReading(string Point, string Value, string? Unit, string? At, string? Why, Place Place);

/// <summary>Files of readings: CSV with a header of <c>point,value</c> and, if wanted, <c>unit,at,why</c>, in any order.</summary>
public static class ReadingsCsv
{
    private static readonly string[] Known = ["point", "value", "unit", "at", "why"];

    /// <summary>Every row, or every mistake in the file's form. Values are not judged here.</summary>
    public static Parsed<IReadOnlyList<CsvReading>> Read(string file, string text)
    {
        var mistakes = new List<Mistake>();
        var rows = new List<CsvReading>();
        using var csv = new CsvReader(new StringReader(text), new CsvConfiguration(CultureInfo.InvariantCulture) { TrimOptions = TrimOptions.Trim, BadDataFound = null });
        if (!csv.Read() || !csv.ReadHeader())
        {
            return new(null, [new(new(file, 1, 1), "the file is empty", Accepted)]);
        }

        var header = csv.HeaderRecord!.Select(h => h.ToLowerInvariant()).ToArray();
        var needed = Array.Exists(header, h => h == "point") && Array.Exists(header, h => h == "value");
        var unknown = header.Except(Known, StringComparer.Ordinal).ToList();
        if (!needed || unknown.Count > 0)
        {
            var wrong = needed ? $"unknown column {string.Join(", ", unknown)}" : "the first line is not a header with point and value";
            return new(null, [new(new(file, 1, 1), wrong, Accepted)]);
        }

        while (csv.Read())
        {
            var place = new Place(file, csv.Parser.RawRow, 1);
            if (csv.Parser.Count != header.Length)
            {
                mistakes.Add(new(place, $"{csv.Parser.Count} columns where the header has {header.Length}", string.Join(',', header)));
                continue;
            }

            string? Cell(string name) => Array.IndexOf(header, name) is >= 0 and var i && csv[i] is { Length: > 0 } cell ? cell : null;
            rows.Add(new(Cell("point") ?? "", Cell("value") ?? "", Cell("unit"), Cell("at"), Cell("why"), place));
        }

        if (rows.Count == 0 && mistakes.Count == 0)
        {
            mistakes.Add(new(new(file, 2, 1), "there is no reading below the header", Accepted));
        }

        return new(rows, mistakes);
    }

    private const string Accepted = "a header line 'point,value,unit,at,why' and one reading a line";
}
