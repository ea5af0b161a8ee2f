using Logbook.Checks.CrossExamination;
using Logbook.Contracts;
using Logbook.Journal;
using Logbook.Plant;
using Round = Logbook.Checks.CrossExamination.Round;

namespace Logbook.Checks.Examining;

/// <summary>Turns entries, one after the other in the order of their time, into what the engine examines.</summary>
internal sealed class Tape(SiteLine line, CalculationGraph graph, IGuard guard)
{
    /// <summary>A reading so much older than its entry belongs to the past, not to the entry.</summary>
    private const double Own = 0.75;

    private Pasts _pasts = new();

    public SiteLine Line => line;

    public CalculationGraph Graph => graph;

    public Tape Copy(IGuard? guarded = null) => new(line, graph, guarded ?? guard) { _pasts = _pasts.Copy() };

    public IGuard Guard => guard;

    /// <summary>Takes an entry up; null when it has no reading that stands in any relation, or the line was upset.</summary>
    /// <param name="standstill">When what was not running.</param>
    /// <param name="slopes">False where only the differences are wanted.</param>
    public Frame? Read(Sheet sheet, Standstill standstill, bool slopes)
    {
        double[] values = [.. Enumerable.Repeat(double.NaN, line.Readings)];
        var unsafeEquipment = BeyondSafety(sheet);
        foreach (var reading in sheet.Readings.Where(r => r.Value is not null))
        {
            if (line.PlaceOf(reading.Point) is not { } place || line.Subjects[place].Point!.Equipment is var equipment
                && (!standstill.Running(equipment, sheet.At) || (equipment is not null && unsafeEquipment.Contains(equipment))))
            {
                continue;
            }

            var own = sheet.Hours - Sheet.HoursOf(reading.At) < Own;
            _pasts.Add(place, own ? sheet.Hours : Sheet.HoursOf(reading.At), reading.Value!.Value);
            values[place] = own ? reading.Value.Value : double.NaN;
        }

        return values.All(double.IsNaN) || standstill.Upset(sheet.At) ? null : Compare(sheet, values, slopes);
    }

    private Frame Compare(Sheet sheet, double[] values, bool slopes)
    {
        List<Row> may = [.. line.Rows.Where(r => r.MaySpeak(place => double.IsFinite(values[place])))];
        var seen = may.Count == 0 ? [] : guard.Run(call => may.ConvertAll(r => r.At(_pasts, line.Typed, sheet.Hours, call, slopes)));
        var byName = seen.OfType<RowSeen>().ToDictionary(s => s.Row.Name, StringComparer.Ordinal);
        return new Frame(sheet, new Round(sheet.Hours, values, [.. line.Rows.Select(r => byName.GetValueOrDefault(r.Name)?.Reading)]), [.. byName.Values]);
    }

    /// <summary>
    /// Equipment whose safety figure (a derived point that is judged always: the margin to boiling) is beyond its limit: so close
    /// its heat and flows tell no balance.
    /// </summary>
    private HashSet<string> BeyondSafety(Sheet sheet) =>
    [
        .. from finding in sheet.Findings
           where finding.Level >= Level.Watch && finding.Code.StartsWith("limit.", StringComparison.Ordinal)
           let point = finding.Point is { } tag ? graph.Site.FindPoint(tag) : null
           where point is { Kind: PointKind.Derived, Always: true, Equipment: not null }
           select point.Equipment,
    ];
}

/// <summary>An entry ready for the engine.</summary>
/// <param name="Rows">What was compared in it.</param>
internal sealed record Frame(Sheet Sheet, Round Round, IReadOnlyList<RowSeen> Rows);
