using System.Globalization;

namespace Logbook.Checks;

/// <summary>A reason from one of the site's lists, by its digit or its words; more words may follow after a colon.</summary>
public static class Reason
{
    /// <summary>The reason as the site words it; null when the list has none such.</summary>
    public static string? Find(IReadOnlyList<string> reasons, string? typed)
    {
        if (string.IsNullOrWhiteSpace(typed))
        {
            return null;
        }

        var text = typed.Trim();
        var colon = text.IndexOf(':', StringComparison.Ordinal);
        var (head, rest) = colon < 0 ? (text, "") : (text[..colon].TrimEnd(), text[colon..]);
        var reason = int.TryParse(head, NumberStyles.None, CultureInfo.InvariantCulture, out var digit)
            ? reasons.ElementAtOrDefault(digit - 1)
            : reasons.FirstOrDefault(r => r.Equals(head, StringComparison.OrdinalIgnoreCase));
        return reason is null ? null : reason + rest;
    }

    /// <summary>True for one that says nothing by itself: words follow, or nobody knows why.</summary>
    public static bool NeedsWords(string reason) => reason.Split(':', 2) is var parts && parts[0].Trim().Equals("other", StringComparison.OrdinalIgnoreCase) && (parts.Length == 1 || string.IsNullOrWhiteSpace(parts[1]));

    /// <summary>What is said where words are missing, and where they go.</summary>
    public const string WordsMissing = "'other' says nothing by itself";

    /// <summary>The list with its digits.</summary>
    public static string Offer(IReadOnlyList<string> reasons) => string.Join(", ", reasons.Select((r, i) => $"{i + 1} {r}"));
}
