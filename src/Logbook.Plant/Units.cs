using System.Text;

namespace Logbook.Plant;

/// <summary>Every unit that the program knows.</summary>
public static class Units
{
    /// <summary>The unit of a look-and-listen point: its value is the digit of a choice.</summary>
    public const string Choice = "choice";

    public static IReadOnlyList<Unit> All => UnitTable.All;

    private static readonly Dictionary<string, Unit> Exact = All.ToDictionary(u => Spell(u.Name), StringComparer.Ordinal);

    private static readonly Dictionary<string, Unit> AnyCase = All
        .GroupBy(u => Spell(u.Name), StringComparer.OrdinalIgnoreCase)
        .Where(g => g.Count() == 1)
        .ToDictionary(g => g.Key, g => g.Single(), StringComparer.OrdinalIgnoreCase);

    /// <summary>The unit with this name or spelling (<c>°C</c>, <c>m³/h</c>), or null.</summary>
    public static Unit? Find(string name)
    {
        var spelled = Spell(name);
        return Exact.GetValueOrDefault(spelled) ?? AnyCase.GetValueOrDefault(spelled);
    }

    /// <summary>True when a value in one can be given in the other.</summary>
    public static bool CanConvert(Unit from, Unit to) => string.Equals(from.Dimension, to.Dimension, StringComparison.Ordinal);

    /// <summary>The value in another unit of the same dimension.</summary>
    /// <exception cref="ArgumentException">The units have different dimensions.</exception>
    public static double Convert(double value, Unit from, Unit to)
    {
        if (!CanConvert(from, to))
        {
            throw new ArgumentException($"{from} is no {to.Dimension}", nameof(from));
        }

        // An equal unit must give back what was typed, to the last bit.
        return from == to ? value : ((value * from.Factor) + from.Offset - to.Offset) / to.Factor;
    }

    /// <summary>A difference (an uncertainty, a step) in another unit of the same dimension: the factor without the offset.</summary>
    public static double ConvertDifference(double value, Unit from, Unit to) =>
        CanConvert(from, to)
            ? value * from.Factor / to.Factor
            : throw new ArgumentException($"{from} is no {to.Dimension}", nameof(from));

    /// <summary>The units in which a value of <paramref name="unit"/> may be given, as one would list them: <c>m3/h, L/min, gpm</c>.</summary>
    public static string AcceptedFor(Unit unit) => string.Join(", ", All.Where(u => CanConvert(u, unit)).Select(u => u.Name));

    /// <summary>The mistake of a unit that is unknown, with the accepted ones: of the kind that is wanted, else of the one that was probably meant.</summary>
    public static Mistake Unknown(string typed, Place place, Unit? wanted = null)
    {
        if (wanted is not null)
        {
            return new Mistake(place, $"unit '{typed}' is unknown", "accepted: " + AcceptedFor(wanted));
        }

        var meant = Spelling.Nearest(Spell(typed), [.. All.Select(u => u.Name)], 1);
        var accepted = LooksLikeAlkali(typed)
            ? $"alkali needs its basis: {AcceptedFor(Find("g/L Na2O")!)}"
            : meant.Count > 0 ? $"accepted of that kind: {AcceptedFor(Find(meant[0])!)}" : $"accepted: {string.Join(", ", All.Select(u => u.Name))}";
        return new Mistake(place, $"unit '{typed}' is unknown", accepted);
    }

    private static bool LooksLikeAlkali(string typed) =>
        typed.Contains("Na", StringComparison.Ordinal) || typed.Contains("alkali", StringComparison.OrdinalIgnoreCase);

    /// <summary>One spelling for the many ways to write a unit: no signs beyond plain letters, one space, no 'as'.</summary>
    private static string Spell(string name)
    {
        var text = new StringBuilder(name.Trim());
        text.Replace("°", "deg").Replace("³", "3").Replace("²", "2").Replace('µ', 'u').Replace('μ', 'u')
            .Replace("₂", "2").Replace('·', ' ').Replace('*', ' ').Replace("^", "").Replace(" as ", " ")
            .Replace("(", "").Replace(")", "");
        return string.Join(' ', text.ToString().Split(' ', StringSplitOptions.RemoveEmptyEntries));
    }
}
