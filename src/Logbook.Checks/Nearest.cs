namespace Logbook.Checks;

/// <summary>The names that a person may have meant.</summary>
internal static class Nearest
{
    /// <summary>Up to three known names that start alike or differ by few keys, the nearest first; empty when none comes near.</summary>
    public static IReadOnlyList<string> To(string typed, IEnumerable<string> known)
    {
        var near = Math.Max(2, typed.Length / 3);
        return [.. known
            .Select(name => (Name: name, Distance: Distance(typed.ToUpperInvariant(), name.ToUpperInvariant())))
            .Where(n => n.Distance <= near || (typed.Length > 1 && n.Name.StartsWith(typed, StringComparison.OrdinalIgnoreCase)))
            .OrderBy(n => n.Distance).ThenBy(n => n.Name, StringComparer.Ordinal)
            .Take(3).Select(n => n.Name)];
    }

    /// <summary>What to say is accepted: the near ones, else all of a short list, else nothing but where to look.</summary>
    public static string Offer(string typed, IReadOnlyCollection<string> known, string look)
    {
        var near = To(typed, known);
        return near.Count > 0 ? "did you mean " + Words.Or(near) + "?"
            : known.Count is > 0 and <= 12 ? "accepted: " + string.Join(", ", known)
            : look;
    }

    /// <summary>Keys to press to turn one text into the other; two neighbours swapped count as one.</summary>
    private static int Distance(string a, string b)
    {
        var d = new int[a.Length + 1, b.Length + 1];
        for (var i = 0; i <= a.Length; i++)
        {
            d[i, 0] = i;
        }

        for (var j = 0; j <= b.Length; j++)
        {
            d[0, j] = j;
        }

        for (var i = 1; i <= a.Length; i++)
        {
            for (var j = 1; j <= b.Length; j++)
            {
                var changed = d[i - 1, j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
                d[i, j] = Math.Min(Math.Min(d[i - 1, j] + 1, d[i, j - 1] + 1), changed);
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                {
                    d[i, j] = Math.Min(d[i, j], d[i - 2, j - 2] + 1);
                }
            }
        }

        return d[a.Length, b.Length];
    }
}
