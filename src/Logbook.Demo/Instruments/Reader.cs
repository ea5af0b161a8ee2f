using System.Globalization;
using Logbook.Demo.Line;
using Logbook.Plant;

namespace Logbook.Demo.Instruments;

/// <summary>
/// What a person reads: the truth, the instrument's own small bias, chance, faults, and the digits that it shows. To be asked in
/// the order of time, since chance is drawn as it goes.
/// </summary>
internal sealed class Reader(LineHistory history, IReadOnlyList<InstrumentFault> faults, Chance chance)
{
    private readonly Dictionary<string, Instrument> _instruments = new(StringComparer.Ordinal);

    /// <summary>True when the simulator knows what this point shows.</summary>
    public static bool Knows(Point point) =>
        point.Choices.Count > 0
        || BalanceReadings.ByTag.ContainsKey(point.Tag)
        || TitrationReadings.ByTag.ContainsKey(point.Tag)
        || SteadyReading.ByTag.ContainsKey(point.Tag)
        || HoursReadings.ByTag.ContainsKey(point.Tag);

    /// <summary>The text that a person would type.</summary>
    public string Read(Point point, DateTimeOffset at)
    {
        var instrument = Of(point);
        var fault = faults.FirstOrDefault(f => f.Covers(point.Tag, at));
        if (fault is { Kind: FaultKind.Stuck })
        {
            return instrument.StuckAt ??= Show(point, Noisy(point, instrument, at));
        }

        instrument.StuckAt = null;
        if (point.Choices.Count > 0)
        {
            return fault is { Kind: FaultKind.Says } ? Show(point, fault.Amount) : instrument.Look(point, chance);
        }

        var value = Noisy(point, instrument, at);
        return Show(point, fault switch
        {
            { Kind: FaultKind.Offset } => value + fault.Amount,
            { Kind: FaultKind.Scale } => value * fault.Amount,
            { Kind: FaultKind.Drift } => value + (fault.Amount * (at - fault.From).TotalHours),
            _ => value,
        });
    }

    /// <summary>Before any error.</summary>
    public double Truth(Point point, DateTimeOffset at)
    {
        var moment = history.At(at);
        return BalanceReadings.ByTag.GetValueOrDefault(point.Tag)?.Invoke(moment)
            ?? TitrationReadings.ByTag.GetValueOrDefault(point.Tag)?.Invoke(moment)
            ?? HoursReadings.ByTag.GetValueOrDefault(point.Tag)?.Invoke(at)
            ?? Of(point).Wander(at);
    }

    private double Noisy(Point point, Instrument instrument, DateTimeOffset at)
    {
        var truth = Truth(point, at);
        var u = point.U?.Of(truth) ?? 0;
        return truth + (u * ((instrument.Bias * 0.5) + (chance.Normal() * 0.8)));
    }

    private Instrument Of(Point point)
    {
        if (!_instruments.TryGetValue(point.Tag, out var instrument))
        {
            var steady = SteadyReading.ByTag.GetValueOrDefault(point.Tag);
            instrument = new Instrument(
                Math.Clamp(chance.Normal(), -1.5, 1.5), steady is null ? null : new Drift(steady.Mean, steady.Sd, steady.Hours, chance));
            _instruments.Add(point.Tag, instrument);
        }

        return instrument;
    }

    private static string Show(Point point, double value)
    {
        var possible = Math.Clamp(value, point.Lowest ?? double.MinValue, point.Highest ?? double.MaxValue);
        var shown = point.Resolution is { } step ? Math.Round(possible / step) * step : possible;
        return shown.ToString("F" + point.Decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
    }
}
