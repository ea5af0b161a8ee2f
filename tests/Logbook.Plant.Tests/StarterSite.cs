using Logbook.Plant;

namespace Logbook.Plant.Tests;

/// <summary>The starter site as it is shipped, and variants of it.</summary>
internal static class StarterSite
{
    public static readonly SiteFiles Files = SiteReader.Load(Path.Combine(AppContext.BaseDirectory, "site")).Value!;

    public static readonly Site Site = SiteReader.Read(Files).Value!;

    /// <summary>The files with one text put in place of another, which must be there.</summary>
    public static SiteFiles With(string file, string old, string changed)
    {
        Assert.Contains(old, Files.Texts[file], StringComparison.Ordinal);
        var text = Files.Texts[file];
        var at = text.IndexOf(old, StringComparison.Ordinal);
        return WithText(Files, file, string.Concat(text.AsSpan(0, at), changed, text.AsSpan(at + old.Length)));
    }

    public static SiteFiles WithText(SiteFiles files, string file, string text) =>
        new(new Dictionary<string, string>(files.Texts, StringComparer.Ordinal) { [file] = text });

    /// <summary>The site with other shifts and crews, through the reader.</summary>
    public static Parsed<Site> WithCrews(string shifts, string crews)
    {
        var text = Files.Texts[SiteFiles.SiteToml];
        var from = text.IndexOf("[[shift]]", StringComparison.Ordinal);
        var to = text.IndexOf("# [handover]", StringComparison.Ordinal);
        var people = text[..from] + shifts + "\n" + crews + "\n" + text[to..];
        return SiteReader.Read(WithText(Files, SiteFiles.SiteToml, people));
    }

    public static DateTimeOffset NewYork(int year, int month, int day, int hour = 0, int minute = 0) =>
        Calendar.AtSite(Site, new DateTime(year, month, day, hour, minute, 0));
}
