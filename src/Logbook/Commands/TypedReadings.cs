using Logbook.Checks;
using Logbook.Plant;

namespace Logbook.Commands;

/// <summary>Readings as the command line and CSV files give them.</summary>
internal static class TypedReadings
{
    /// <summary>POINT=VALUE or POINT=VALUE UNIT.</summary>
    public static List<TypedReading> Of(IEnumerable<string> arguments, ICollection<Mistake> mistakes)
    {
        var typed = new List<TypedReading>();
        foreach (var argument in arguments)
        {
            if (argument.StartsWith("--", StringComparison.Ordinal))
            {
                mistakes.Add(Mistake.Typed($"there is no option {argument}", "see: logbook record --help"));
                return typed;
            }

            if (Split(argument) is var (point, value))
            {
                typed.Add(new TypedReading(point, value, Place.Unknown));
            }
            else
            {
                mistakes.Add(Mistake.Typed($"'{argument}' is not a reading", "POINT=VALUE, POINT=\"VALUE UNIT\", or POINT=- for not taken"));
            }
        }

        return typed;
    }

    /// <summary>Every row of a CSV file with the columns point,value,unit,at,why ('-' reads standard input).</summary>
    public static IReadOnlyList<TypedReading> FromFile(Shell shell, string path, Site site, DateTimeOffset now, ICollection<Mistake> mistakes)
    {
        if (path != "-" && !File.Exists(shell.FullPath(path)))
        {
            mistakes.Add(Mistake.Typed($"{path}: there is no such file"));
            return [];
        }

        var text = path == "-" ? TextFile.Read(shell.In) : TextFile.Read(shell.FullPath(path));
        var name = path == "-" ? "standard input" : Path.GetFileName(path);
        var table = CsvTable.Read(name, text, [.. Columns, .. OfExport], ["point", "value"]);
        foreach (var mistake in table.Mistakes)
        {
            mistakes.Add(mistake);
        }

        var rows = table.Value?.Rows ?? [];
        if (rows.Count == 0 && table.Mistakes.Count == 0)
        {
            mistakes.Add(new Mistake(new(name, 2, 1), "there is no reading below the header", "one reading a line: " + string.Join(',', Columns)));
        }

        return [.. rows.Select(row => new TypedReading(CsvCell.TextOf(row["point"]), row["value"], row.PlaceOf("value"))
        {
            Unit = Filled(row["unit"]), Why = Filled(row["why"]), At = At(row, site, now, mistakes),
        })];
    }

    /// <summary>Puts each POINT=REASON beside its reading.</summary>
    public static void GiveReasons(List<TypedReading> typed, IEnumerable<string> reasons, ICollection<Mistake> mistakes)
    {
        foreach (var reason in reasons)
        {
            var (point, why) = Split(reason) ?? ("", "");
            var i = typed.FindIndex(r => r.Point.Equals(point, StringComparison.OrdinalIgnoreCase));
            if (i < 0)
            {
                mistakes.Add(Mistake.Typed($"--why {reason}: no reading of that point is given", "--why POINT=REASON beside POINT=VALUE or POINT=-"));
            }
            else
            {
                typed[i] = typed[i] with { Why = why };
            }
        }
    }

    private static readonly string[] Columns = ["point", "value", "unit", "at", "why"];

    // What an export says beside them is of the journal that it came from.
    private static readonly string[] OfExport = ["seq", "round", "by", "status", "doubts"];

    private static string? Filled(string cell) => cell.Length == 0 ? null : CsvCell.TextOf(cell);

    private static DateTimeOffset? At(CsvRow row, Site site, DateTimeOffset now, ICollection<Mistake> mistakes)
    {
        if (row["at"].Length == 0)
        {
            return null;
        }

        var at = Typed.Time(row["at"], site, now, row.PlaceOf("at"), out var mistake);
        if (mistake is not null)
        {
            mistakes.Add(mistake);
        }

        return at;
    }

    private static (string Name, string Value)? Split(string argument)
    {
        var i = argument.IndexOf('=', StringComparison.Ordinal);
        return i <= 0 || i == argument.Length - 1 ? null : (argument[..i].Trim(), argument[(i + 1)..].Trim());
    }
}
