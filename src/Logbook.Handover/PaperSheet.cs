using System.Globalization;
using System.Text;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>
/// A round on paper, in walking order, to be filled in on the walk and typed later. It has no old values: who sees the last
/// one first reads it into the instrument.
/// </summary>
public static class PaperSheet
{
    private const int Width = 72;
    private const int Field = 12;

    public static string Of(Site site, Round round, DateTimeOffset now)
    {
        var text = new StringBuilder();
        text.AppendLine(Say.Visible(site.Name)).AppendLine(Say.Visible(round.Title)).AppendLine();
        text.AppendLine("Walked by ______________  from ____:____  to ____:____  date __________").AppendLine();
        var area = "";
        foreach (var point in round.Points.Select(site.FindPoint).OfType<Point>().Where(p => p.Kind == PointKind.Read))
        {
            if (point.Area != area)
            {
                area = point.Area;
                text.AppendLine(area.Replace('-', ' ').ToUpperInvariant());
            }

            foreach (var line in Lines(point))
            {
                text.AppendLine(line.TrimEnd());
            }
        }

        var reasons = string.Join("  ", site.Reasons.NotTaken.Take(9).Select((r, i) => string.Create(CultureInfo.InvariantCulture, $"{i + 1} {Say.Visible(r)}")));
        text.AppendLine().AppendLine("Not taken: write n and the digit.");
        foreach (var line in Broken(reasons, Width))
        {
            text.AppendLine(line);
        }

        text.AppendLine("Type it in afterwards: it counts from the walk's times.").AppendLine($"Printed {Say.Day(site, now)}");
        return text.Replace("\r\n", "\n").ToString();
    }

    private static IEnumerable<string> Lines(Point point)
    {
        var name = $"{point.Tag,-9} {Say.Visible(point.Description)}";
        var unit = point.Choices.Count > 0 ? "" : " " + point.Unit.Name;
        var field = new string('_', Field) + unit.PadRight(11);
        var room = Width - field.Length - 1;
        var broken = Broken(name, room).ToList();
        for (var i = 0; i < broken.Count; i++)
        {
            yield return i < broken.Count - 1 ? (i == 0 ? "" : "          ") + broken[i] : ((i == 0 ? "" : "          ") + broken[i]).PadRight(room + 1) + field;
        }

        var beside = point.Choices.Count > 0
            ? string.Join("  ", point.Choices.Select(c => string.Create(CultureInfo.InvariantCulture, $"{c.Digit} {Say.Visible(c.Text)}")))
            : Limits(point.Limits);
        foreach (var line in beside.Length == 0 ? [] : Broken(beside, Width - 10))
        {
            yield return "          " + line;
        }
    }

    private static string Limits(Limits limits)
    {
        (string Word, double? Limit)[] all = [("urgent below", limits.UrgentLow), ("watch below", limits.WatchLow), ("watch above", limits.WatchHigh), ("urgent above", limits.UrgentHigh)];
        return string.Join(", ", all.Where(l => l.Limit is not null).Select(l => $"{l.Word} {l.Limit!.Value.ToString("G6", CultureInfo.InvariantCulture)}"));
    }

    private static IEnumerable<string> Broken(string text, int width)
    {
        var line = "";
        foreach (var word in text.Split(' '))
        {
            if (line.Length > 0 && line.Length + 1 + word.Length > width)
            {
                yield return line;
                line = "";
            }

            line = line.Length == 0 ? word : line + " " + word;
        }

        yield return line;
    }
}
