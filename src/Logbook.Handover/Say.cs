using System.Globalization;
using System.Text;
using Logbook.Journal;
using Logbook.Plant;
using Calendar = Logbook.Plant.Calendar;

namespace Logbook.Handover;

/// <summary>How values, times, people and ages are said, everywhere alike.</summary>
public static class Say
{
    /// <summary>Text from people and files with everything that could steer a terminal or hide words made visible.</summary>
    public static string Visible(string text)
    {
        if (!text.EnumerateRunes().Any(Hides))
        {
            return text;
        }

        var shown = new StringBuilder(text.Length + 8);
        foreach (var rune in text.EnumerateRunes())
        {
            _ = Hides(rune) ? shown.Append(CultureInfo.InvariantCulture, $"\\u{rune.Value:X4}") : shown.Append(rune.ToString());
        }

        return shown.ToString();
    }

    // Controls, direction marks and invisible joiners, line and paragraph ends, private use, lone surrogates (read as U+FFFD).
    private static bool Hides(Rune rune) => Rune.GetUnicodeCategory(rune) is UnicodeCategory.Control or UnicodeCategory.Format
        or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator or UnicodeCategory.PrivateUse or UnicodeCategory.OtherNotAssigned;

    /// <summary>A kind of carried item as it is said: <c>temporary change</c>. Typed to a command it has its hyphen.</summary>
    public static string Kind(string itemKind) => Visible(itemKind.Replace('-', ' '));

    /// <summary><c>02:10</c> on the day of <paramref name="near"/> or within half a day of it, else <c>24 Nov 02:10</c>; <c>01:30 (2nd)</c> in an hour that comes twice.</summary>
    public static string Time(Site site, DateTimeOffset at, DateTimeOffset near)
    {
        var local = Calendar.ToSite(site, at);
        var close = (at - near).Duration() <= TimeSpan.FromHours(12) || local.Date == Calendar.ToSite(site, near).Date;
        return (close ? "" : local.ToString("d MMM ", CultureInfo.InvariantCulture)) + Clock(site, local);
    }

    /// <summary><c>Tue 24 Nov 19:00</c>.</summary>
    public static string Day(Site site, DateTimeOffset at)
    {
        var local = Calendar.ToSite(site, at);
        return local.ToString("ddd d MMM ", CultureInfo.InvariantCulture) + Clock(site, local);
    }

    /// <summary>An offset behind the time would read as a stretch of hours.</summary>
    private static string Clock(Site site, DateTimeOffset local) => local.ToString("HH:mm", CultureInfo.InvariantCulture)
        + (!site.Zone.IsAmbiguousTime(local.DateTime) ? "" : local.Offset == site.Zone.GetAmbiguousTimeOffsets(local.DateTime).Max() ? " (1st)" : " (2nd)");

    /// <summary>A number with the point's decimals.</summary>
    public static string Number(double value, int decimals) => Figures.Fixed(value, decimals);

    /// <summary><c>103.4 degC</c>, or the words of a choice: <c>out</c>.</summary>
    public static string Value(Point? point, double value, string unit)
    {
        if (point is null)
        {
            return $"{value.ToString("G6", CultureInfo.InvariantCulture)} {Visible(unit)}";
        }

        return point.Choices.FirstOrDefault(c => c.Digit == value) is { } choice
            ? Visible(choice.Text)
            : $"{Figures.Fixed(value, point.Decimals, whole: point.Kind == PointKind.Read)} {Visible(unit == point.Unit.Name ? point.UnitInWords : unit)}".TrimEnd();
    }

    /// <summary>What a reading says: its value, or that it was not taken and why.</summary>
    public static string Reading(Site site, Reading reading) => reading.Value is { } value
        ? Value(site.FindPoint(reading.Point), value, reading.Unit)
        : "not taken" + (string.IsNullOrEmpty(reading.Why) ? "" : $" ({Visible(reading.Why)})");

    /// <summary>The name of a person, else the code as it was typed.</summary>
    public static string Person(Site site, string code) => Visible(site.FindPerson(code)?.Name ?? code);

    /// <summary>The name of a piece of equipment, an area in words, an unknown code as it is.</summary>
    public static string Equipment(Site site, string code) => site.FindEquipment(code) is { } equipment ? Visible(equipment.Name)
        : Area.All.Contains(code, StringComparer.Ordinal) ? code.Replace('-', ' ')
        : Visible(code);

    /// <summary>How long something is open: <c>4 shifts, 2 days</c>. A shift counts when it began since.</summary>
    public static string Age(Site site, DateTimeOffset since, DateTimeOffset now)
    {
        var shifts = ShiftsSince(site, since, now);
        var days = (int)(now - since).TotalDays;
        return shifts == 0 ? "this shift" : Count(shifts, "shift") + (days == 0 ? "" : ", " + Count(days, "day"));
    }

    /// <summary>How many shifts have begun since.</summary>
    public static int ShiftsSince(Site site, DateTimeOffset since, DateTimeOffset now) =>
        since >= now ? 0 : Calendar.Shifts(site, since, now).Count(s => s.Start > since);

    /// <summary>Visible text that ends as a sentence does.</summary>
    public static string Sentence(string text) => Visible(text).TrimEnd() is var words && words.Length > 0 && words[^1] is ('.' or '?' or '!') ? words : words + ".";

    /// <summary><c>30 min</c>, <c>1 h</c>, <c>1 h 40 min</c>.</summary>
    public static string Span(TimeSpan span)
    {
        var (hours, minutes) = ((int)span.TotalHours, span.Minutes);
        string Part(int number, string unit) => number == 0 ? "" : string.Create(CultureInfo.InvariantCulture, $"{number} {unit}");
        return hours + minutes == 0 ? "0 min" : string.Join(' ', new[] { Part(hours, "h"), Part(minutes, "min") }.Where(p => p.Length > 0));
    }

    public static string Count(int number, string word) =>
        string.Create(CultureInfo.InvariantCulture, $"{number} {word}{(number == 1 ? "" : "s")}");

    /// <summary>The record that a statement rests on: <c>(#12)</c>.</summary>
    public static string Ref(params IEnumerable<long> seqs) => $"({string.Join(", ", seqs.Distinct().Select(s => "#" + s.ToString(CultureInfo.InvariantCulture)))})";
}
