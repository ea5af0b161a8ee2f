using System.Text.Json.Serialization;

namespace Logbook.Plant;

/// <summary>The text of the site's files as they were read: name (<c>site.toml</c>) to content. Adopted into the journal as they are.</summary>
public sealed record SiteFiles(IReadOnlyDictionary<string, string> Texts)
{
    public const string SiteToml = "site.toml";
    public const string PointsCsv = "points.csv";
    public const string CautionsToml = "cautions.toml";

    /// <summary>Why a required file is not among them, when they are those of a folder.</summary>
    [JsonIgnore] // what is in force was whole
    public IReadOnlyList<Mistake> Unread { get; init; } = [];
}
