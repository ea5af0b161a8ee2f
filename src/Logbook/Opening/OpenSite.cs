using Logbook.Handover;
using System.CommandLine;
using Logbook.Checks;
using Logbook.Journal;
using Logbook.Plant;
using Logbook.PluginHost;
using Logbook.Storage.LiteDb;

namespace Logbook;

/// <summary>Opens the site that a command is about. What a command does not need is not loaded.</summary>
internal static class OpenSite
{
    /// <summary>The site folder: --site, else LOGBOOK_SITE, else the current folder.</summary>
    public static string Folder(Shell shell, ParseResult parse) =>
        shell.FullPath(parse.GetValue(Options.Site) ?? (string.IsNullOrEmpty(shell.SiteVariable) ? "." : shell.SiteVariable));

    /// <summary>Runs <paramref name="action"/> on a desk that can judge and save entries.</summary>
    public static int ForWriting(Shell shell, ParseResult parse, Func<Desk, int> action) => With(shell, parse, asOf: null, () => Calculations(shell, Folder(shell, parse)), action);

    /// <summary>Runs <paramref name="action"/> on a desk that only reads: no plug-in is loaded, no lock is taken.</summary>
    public static int ForReading(Shell shell, ParseResult parse, Func<Desk, int> action, Option<string?>? asOf = null) => With(shell, parse, asOf, () => [], action);

    /// <summary>
    /// Runs <paramref name="action"/> on the site's desk; with --server on a desk of each line that is asked for. Each gets a
    /// shell to print to, so that what several say can be put together.
    /// </summary>
    /// <param name="computes">True for what is compared by the site's calculations: then plug-ins are loaded, for the own line alone.</param>
    public static int ForLines(Shell shell, ParseResult parse, Func<Shell, Desk, int> action, Option<string?>? asOf = null, bool computes = false) => parse.GetValue(ServerOptions.Server)
        ? ServerReading.Each(shell, parse, (own, desk) => AsOf(own, parse, asOf, desk, past => action(own, past)))
        : With(shell, parse, asOf, () => computes ? Calculations(shell, Folder(shell, parse)) : [], desk => action(shell, desk));

    /// <summary>
    /// The calculations that the shipped plug-ins and the site's own offer; one that could not be loaded is said on the error
    /// stream.
    /// </summary>
    public static IReadOnlyList<LoadedCalculation> Calculations(Shell shell, string? site)
    {
        var reports = Plugins(shell, site);
        foreach (var report in reports.Where(r => r.Text.Length > 0))
        {
            shell.Error.WriteLine(NotUsed(report));
        }

        return [.. reports.SelectMany(r => r.Calculations.Select(c => new LoadedCalculation(c, $"{r.Name} {r.Version}")))];
    }

    public static string NotUsed(PluginReport report) => Say.Visible($"plug-in {report.Name} is not used: {report.Text}");

    /// <summary>What became of each plug-in: the shipped ones, then those in the site's <c>plugins/</c> by what its journal trusts.</summary>
    /// <param name="site">A folder; without a site in it only the shipped ones count.</param>
    public static IReadOnlyList<PluginReport> Plugins(Shell shell, string? site)
    {
        var shipped = PluginCatalog.LoadShipped(Path.Combine(AppContext.BaseDirectory, "plugins"));
        return site is null || !Directory.Exists(OwnPlugins(site)) || !IsSite(site)
            ? shipped
            : [.. shipped, .. PluginCatalog.LoadFrom(OwnPlugins(site), Trusted(shell, site), shipped)];
    }

    /// <summary>True when a site is here, be it that its files are gone: those in force are in its journal.</summary>
    public static bool IsSite(string folder) => File.Exists(Path.Combine(folder, SiteFiles.SiteToml)) || Directory.Exists(Path.Combine(folder, "journal"));

    /// <summary>Where a site keeps its own plug-ins.</summary>
    public static string OwnPlugins(string site) => Path.Combine(site, "plugins");

    private static Dictionary<string, IReadOnlyDictionary<string, string>> Trusted(Shell shell, string site)
    {
        using var store = Store(shell, site, TimeSpan.FromSeconds(5), shell.Clock);
        var trusted = new Dictionary<string, IReadOnlyDictionary<string, string>>(StringComparer.Ordinal);
        foreach (var plugin in store.Read().Select(r => r.Body).OfType<PluginTrusted>())
        {
            trusted[plugin.Name] = plugin.Files;
        }

        return trusted;
    }

    /// <summary>Runs <paramref name="action"/> on a desk of the given folder.</summary>
    public static int At(Shell shell, string folder, SiteFiles files, IReadOnlyList<LoadedCalculation> calculations, Func<Desk, int> action) =>
        Guarded(shell, () =>
        {
            var desk = Desk(shell, folder, files, TimeSpan.FromSeconds(5), shell.Clock, calculations);
            using var store = desk.Store;
            desk.Follow();
            return action(desk);
        });

    /// <summary>Runs <paramref name="action"/> on the journal alone, whatever the site's files say.</summary>
    public static int Journal(Shell shell, ParseResult parse, Func<LiteDbJournal, int> action, int whenDamaged) =>
        Guarded(shell, () =>
        {
            using var store = Store(shell, Folder(shell, parse), Wait(parse), shell.Clock);
            return action(store);
        }, whenDamaged);

    /// <summary>Opens a desk on a folder. The caller disposes of its store.</summary>
    public static Desk Desk(Shell shell, string folder, SiteFiles files, TimeSpan wait, TimeProvider clock, IReadOnlyList<LoadedCalculation> calculations) =>
        new(Store(shell, folder, wait, clock), files, calculations, new DeadlineGuard(), clock, shell.Terminal);

    private static LiteDbJournal Store(Shell shell, string folder, TimeSpan wait, TimeProvider clock) =>
        new(folder, shell.Terminal, clock, wait);

    public static TimeSpan Wait(ParseResult parse) => TimeSpan.FromSeconds(parse.GetValue(Options.Wait) ?? 5);

    private static int With(
        Shell shell, ParseResult parse, Option<string?>? asOf, Func<IReadOnlyList<LoadedCalculation>> calculations, Func<Desk, int> action)
    {
        var folder = Folder(shell, parse);
        var files = SiteReader.Found(folder);
        return Guarded(shell, () =>
        {
            using var journal = Store(shell, folder, Wait(parse), shell.Clock);
            var whole = ShortEnd.Warn(shell, journal);
            var desk = new Desk(journal, files, calculations(), new DeadlineGuard(), shell.Clock, shell.Terminal);
            desk.Server = ServerWords.Noted(shell, folder, desk);
            desk.Follow();
            if (desk.NotReady.Count > 0)
            {
                return shell.Refuse(desk.NotReady);
            }

            foreach (var unread in files.Unread)
            {
                shell.Error.WriteLine($"WARNING: {unread}; the file in force is used, as the journal keeps it");
            }

            var answer = AsOf(shell, parse, asOf, desk, action);
            return answer == ExitCode.Done && !whole ? ExitCode.Store : answer;
        });
    }

    public static int Guarded(Shell shell, Func<int> action, int whenDamaged = ExitCode.Store)
    {
        try
        {
            return action();
        }
        catch (JournalException trouble)
        {
            shell.Error.WriteLine(Say.Visible(trouble.Message));
            return trouble.Trouble is JournalTrouble.Damaged or JournalTrouble.Unreadable ? whenDamaged : ExitCode.Store;
        }
        catch (OperationCanceledException)
        {
            shell.Error.WriteLine("stopped; nothing was half done");
            return ExitCode.Stopped;
        }
    }

    private static int AsOf(Shell shell, ParseResult parse, Option<string?>? asOf, Desk desk, Func<Desk, int> action)
    {
        var mistakes = new List<Mistake>();
        if (asOf is null || Options.Past(parse, asOf, desk.Site, desk.Now, mistakes) is not { } then)
        {
            return mistakes.Count > 0 ? shell.Refuse(mistakes) : action(desk);
        }

        var past = new Desk(new JournalAsOf(desk.Store, then), desk.Files, desk.Calculations, desk.Guard, new FixedClock(then), desk.Terminal);
        past.Follow();
        return action(past);
    }
}
