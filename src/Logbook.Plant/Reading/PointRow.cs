using System.Globalization;
using System.Text.RegularExpressions;

namespace Logbook.Plant.Reading;

/// <summary>One row of points.csv. Every mistake of the row is told; the point counts only when there is none.</summary>
internal sealed partial class PointRow(CsvRow row, IReadOnlyCollection<string>? equipment, List<Mistake> mistakes)
{
    public Point Read(KnownPoints known)
    {
        var kind = OneOf("kind", ["read", "derived"]) switch { "read" => PointKind.Read, "derived" => PointKind.Derived, _ => (PointKind?)null };
        var point = new Point
        {
            Tag = Tag(known, kind),
            Description = Needed("description"),
            Area = OneOf("area", Area.All) ?? "",
            Unit = Unit() ?? Units.All[0],
            Kind = kind ?? PointKind.Read,
            Decimals = Decimals(),
            Resolution = Positive("resolution"),
            U = U(kind),
            Lowest = Number("lowest"),
            Highest = Number("highest"),
            Limits = new Limits(Number("urgent_low"), Number("watch_low"), Number("watch_high"), Number("urgent_high")),
            Step = Positive("step"),
            Stale = Stale(),
            Equipment = Equipment(),
            Sample = Name("sample"),
            Estimates = Name("estimates"),
            Choices = Choices(),
            Always = row["always"].Length > 0 && OneOf("always", ["yes", "no"]) == "yes",
        };
        LimitsInOrder();
        if (point.Sample is { } sample)
        {
            known.Samples.Add(sample);
        }

        return point;
    }

    private void Wrong(string column, string wrong, string accepted = "") => mistakes.Add(new Mistake(row.PlaceOf(column), wrong, accepted));

    private string Needed(string column)
    {
        if (row[column].Length == 0)
        {
            Wrong(column, $"{column} is empty", "every point needs one");
        }

        return row[column];
    }

    private string Tag(KnownPoints known, PointKind? kind)
    {
        var tag = Needed("tag");
        if (tag.Length > 0 && !TagForm().IsMatch(tag))
        {
            Wrong("tag", $"tag '{tag}' has other signs", "letters, digits, '-', '_' and '.', a letter first, 24 at most");
        }
        else if (tag.Length > 0 && !known.Add(tag, kind))
        {
            Wrong("tag", $"tag '{tag}' comes twice", "each point has a tag of its own, capitals or not");
        }

        return tag;
    }

    private string? OneOf(string column, IReadOnlyCollection<string> accepted)
    {
        var text = Needed(column);
        if (text.Length == 0 || accepted.Contains(text, StringComparer.Ordinal))
        {
            return text.Length == 0 ? null : text;
        }

        Wrong(column, $"{column} '{text}' is unknown", Spelling.Accepted(text, accepted));
        return null;
    }

    private Unit? Unit()
    {
        var text = Needed("unit");
        var unit = Units.Find(text);
        if (text.Length > 0 && unit is null)
        {
            mistakes.Add(Units.Unknown(text, row.PlaceOf("unit")));
        }
        else if (unit is { Dimension: "density" } && AlkaliWords().IsMatch(row["description"]) && !row["description"].Contains("compound", StringComparison.OrdinalIgnoreCase))
        {
            Wrong("unit", $"unit '{text}' does not say the basis of the alkali", $"accepted: {Units.AcceptedFor(Units.Find("g/L Na2O")!)}; or 'as the compound' in the description");
        }

        return unit;
    }

    private double? Number(string column)
    {
        if (row[column].Length == 0)
        {
            return null;
        }

        var number = Typed.Number(row[column], row.PlaceOf(column), out var mistake);
        if (mistake is not null)
        {
            mistakes.Add(mistake with { Wrong = $"{column}: {mistake.Wrong}" });
        }

        return number;
    }

    private double? Positive(string column)
    {
        var number = Number(column);
        if (number <= 0)
        {
            Wrong(column, $"{column} {row[column]} is not above 0", "a number above 0, or empty");
        }

        return number;
    }

    private int Decimals()
    {
        var number = Number("decimals") ?? 0;
        if (number is < 0 or > 6 || number != Math.Floor(number))
        {
            Wrong("decimals", $"decimals {row["decimals"]} cannot be shown", "a whole number from 0 to 6");
        }

        return (int)Math.Clamp(number, 0, 6);
    }

    private Uncertainty? U(PointKind? kind)
    {
        if (row["u"].Length == 0)
        {
            return null;
        }

        if (kind == PointKind.Derived)
        {
            Wrong("u", "a derived point has no u of its own", "empty: it follows from the inputs");
        }

        var u = Uncertainties.Parse(row["u"], row.PlaceOf("u"), out var mistake);
        if (mistake is not null)
        {
            mistakes.Add(mistake);
        }

        return u;
    }

    private TimeSpan Stale()
    {
        if (row["stale"].Length == 0)
        {
            return TimeSpan.FromHours(4);
        }

        var stale = Typed.Duration(row["stale"], row.PlaceOf("stale"), out var mistake);
        if (mistake is not null)
        {
            mistakes.Add(mistake);
        }

        return stale ?? TimeSpan.FromHours(4);
    }

    private string? Equipment()
    {
        var code = row["equipment"];
        if (code.Length > 0 && equipment is not null && !equipment.Contains(code, StringComparer.OrdinalIgnoreCase))
        {
            Wrong("equipment", $"equipment '{code}' is unknown", Spelling.Accepted(code, equipment));
        }

        return code.Length == 0 ? null : code;
    }

    private string? Name(string column)
    {
        if (row[column].Length > 0 && !NameForm().IsMatch(row[column]))
        {
            Wrong(column, $"{column} '{row[column]}' has other signs", "small letters, digits and '-'");
        }

        return row[column].Length == 0 ? null : row[column];
    }

    private IReadOnlyList<Choice> Choices()
    {
        var isChoice = string.Equals(row["unit"], Units.Choice, StringComparison.OrdinalIgnoreCase);
        if (isChoice != row["choices"].Length > 0)
        {
            Wrong("choices", isChoice ? "a point with unit 'choice' has no choices" : "choices stand beside another unit than 'choice'", "as in good;leak!watch;blocked!urgent with unit 'choice'");
            return [];
        }

        return isChoice ? [.. row["choices"].Split(';').Select((text, i) => Choice(i + 1, text))] : [];
    }

    private Choice Choice(int digit, string text)
    {
        var parts = text.Split('!', 2);
        var level = parts.Length == 2 ? parts[1].Trim() : null;
        if (parts[0].Trim().Length == 0 || digit > 9 || level is not (null or "note" or "watch" or "urgent"))
        {
            Wrong("choices", $"choice {digit.ToString(CultureInfo.InvariantCulture)} '{text.Trim()}' cannot be read", "at most nine, each TEXT or TEXT!note, TEXT!watch, TEXT!urgent");
        }

        return new Choice(digit, parts[0].Trim(), level);
    }

    /// <summary>Lowest, urgent low, watch low, watch high, urgent high, highest: each that is there lies above the one before.</summary>
    private void LimitsInOrder()
    {
        (string Column, double Value)? before = null;
        foreach (var column in new[] { "lowest", "urgent_low", "watch_low", "watch_high", "urgent_high", "highest" })
        {
            if (Typed.Number(row[column], Place.Unknown, out _) is not { } value)
            {
                continue;
            }

            if (before is { } last && value <= last.Value)
            {
                Wrong(column, $"{column} {row[column]} is not above {last.Column} {row[last.Column]}", "lowest < urgent_low < watch_low < watch_high < urgent_high < highest");
            }

            before = (column, value);
        }
    }

    [GeneratedRegex(@"\A[A-Za-z][A-Za-z0-9._-]{0,23}\z", RegexOptions.None, 1000)]
    private static partial Regex TagForm();

    [GeneratedRegex(@"\A[a-z0-9][a-z0-9-]*\z", RegexOptions.None, 1000)]
    private static partial Regex NameForm();

    [GeneratedRegex(@"\b(TTA|AA|EA|[Aa]lkali|NaOH|Na2S|Na2CO3|Na2O)\b", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex AlkaliWords();
}
