namespace Logbook.Plant;

/// <summary>From the site's files to the site, or every mistake in them at once.</summary>
public static class SiteReader
{
    /// <summary>Reads the files of a site folder; a mistake when a required one is missing.</summary>
    public static Parsed<SiteFiles> Load(string folder) => throw new NotImplementedException();

    /// <summary>Parses, checks and links the files.</summary>
    public static Parsed<Site> Read(SiteFiles files) => throw new NotImplementedException();
}
