using System.Globalization;
using Logbook.Checks.Signals;

namespace Logbook.Operators;

/// <summary>Thirty days, or as many as are asked for, of one round on one line; one crew of four has the manner that is looked at, the others are honest.</summary>
internal sealed class SimulatedMonth
{
    private const string Pattern = "DDNNoooo";
    private static readonly DateTimeOffset Begin = new(2026, 3, 1, 7, 0, 0, TimeSpan.FromHours(-5));

    private readonly List<Walk> _walks = [];
    private readonly SimulatedLine _line;

    public SimulatedMonth(Manner manner, int seed, int days = 30)
    {
        _line = new SimulatedLine(seed);
        var crews = Enumerable.Range(0, 4).Select(c => new Habit(c == 0 ? manner : Manner.Honest, (seed * 7) + c)).ToList();
        var sheets = new List<double?[]>();
        for (var hour = 0; hour < days * 24; hour++)
        {
            _line.Hour();
            var (day, night) = (hour / 24, hour % 24 >= 12);
            var crew = Enumerable.Range(0, 4).First(c => Pattern[(((day - (2 * c)) % 8) + 8) % 8] == (night ? 'N' : 'D'));
            var values = crews[crew].Fill(_line, night, sheets);
            sheets.Add(values);
            var shift = string.Create(CultureInfo.InvariantCulture, $"{Begin.AddDays(day):yyyy-MM-dd}-{(night ? 'N' : 'D')}-{"ABCD"[crew]}");
            _walks.Add(new Walk(shift, Begin.AddHours(hour), values, hour + 1));
        }
    }

    public IReadOnlyList<Walk> Walks => _walks;

    public IReadOnlyList<double> Resolutions => _line.Resolutions;

    public static DateTimeOffset From => Begin;
}
