namespace Logbook;

/// <summary>The templates that are shipped beside the program.</summary>
internal static class Templates
{
    public static string Site { get; } = Path.Combine(AppContext.BaseDirectory, "templates", "site");

    public static string Notes { get; } = Path.Combine(AppContext.BaseDirectory, "templates", "notes");
}
