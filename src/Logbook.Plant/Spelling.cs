namespace Logbook.Plant;

/// <summary>What a person probably meant.</summary>
public static class Spelling
{
    /// <summary>The candidates that are spelled nearest to what was typed, best first; empty when none is near.</summary>
    public static IReadOnlyList<string> Nearest(string typed, IEnumerable<string> candidates, int most = 3)
    {
        var farthest = Math.Max(2, typed.Length / 3);
        return [.. candidates
            .Distinct(StringComparer.OrdinalIgnoreCase)
            .Select(c => (Text: c, Distance: Distance(typed, c)))
            .Where(c => IsBeginning(typed, c.Text) || (c.Distance <= farthest && c.Distance < Math.Max(typed.Length, c.Text.Length)))
            .OrderBy(c => c.Distance)
            .ThenByDescending(c => SameBeginning(typed, c.Text))
            .ThenBy(c => c.Text, StringComparer.Ordinal)
            .Take(most)
            .Select(c => c.Text)];
    }

    /// <summary>What is accepted instead: the nearest candidates, or every one when they are few, or nothing.</summary>
    public static string Accepted(string typed, IReadOnlyCollection<string> candidates)
    {
        var nearest = Nearest(typed, candidates);
        if (nearest.Count > 0)
        {
            return $"nearest: {string.Join(", ", nearest)}";
        }

        return candidates.Count is > 0 and <= 20 ? $"accepted: {string.Join(", ", candidates)}" : "";
    }

    /// <summary>Letters to insert, delete, replace or swap with their neighbour (optimal string alignment), without regard to case.</summary>
    public static int Distance(string a, string b)
    {
        a = a.ToUpperInvariant();
        b = b.ToUpperInvariant();
        var d = new int[a.Length + 1, b.Length + 1];
        for (var i = 0; i <= a.Length; i++)
        {
            for (var j = 0; j <= b.Length; j++)
            {
                d[i, j] = i == 0 || j == 0 ? i + j : Cheapest(d, a, b, i, j);
            }
        }

        return d[a.Length, b.Length];
    }

    private static bool IsBeginning(string typed, string candidate) =>
        typed.Length >= 3 && candidate.StartsWith(typed, StringComparison.OrdinalIgnoreCase);

    /// <summary>How many letters agree from the start: tags of one system begin alike.</summary>
    private static int SameBeginning(string a, string b) =>
        a.Zip(b).TakeWhile(p => char.ToUpperInvariant(p.First) == char.ToUpperInvariant(p.Second)).Count();

    private static int Cheapest(int[,] d, string a, string b, int i, int j)
    {
        var same = a[i - 1] == b[j - 1] ? 0 : 1;
        var best = Math.Min(Math.Min(d[i - 1, j] + 1, d[i, j - 1] + 1), d[i - 1, j - 1] + same);
        var swapped = i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1];
        return swapped ? Math.Min(best, d[i - 2, j - 2] + 1) : best;
    }
}
