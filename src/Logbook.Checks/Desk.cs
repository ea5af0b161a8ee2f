using Logbook.Contracts;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Checks;

/// <summary>A place to write from: the store, the state that follows it, the calculations and the clock. One per terminal.</summary>
/// <param name="store">The line's journal.</param>
/// <param name="files">The site's files as they lie in the folder: an empty journal adopts them at its first write.</param>
/// <param name="calculations">What the plug-ins offer.</param>
/// <param name="guard">Runs an entry's calculations.</param>
/// <param name="clock">Where 'now' comes from.</param>
/// <param name="terminal">host:tty.</param>
public sealed class Desk(
    IJournalStore store, SiteFiles files, IReadOnlyList<LoadedCalculation> calculations, IGuard guard, TimeProvider clock, string terminal)
{
    public IJournalStore Store => store;

    public SiteFiles Files => files;

    public IReadOnlyList<LoadedCalculation> Calculations => calculations;

    public IGuard Guard => guard;

    public TimeProvider Clock => clock;

    public string Terminal => terminal;

    /// <summary>The state at the last <see cref="Follow"/> or <see cref="Write"/>.</summary>
    public State State { get; private set; } = State.Empty;

    /// <summary>The site in force: the adopted one, else the folder's.</summary>
    public Site Site => throw new NotImplementedException();

    /// <summary>Now, with the site's offset.</summary>
    public DateTimeOffset Now => Calendar.ToSite(Site, clock.GetUtcNow());

    /// <summary>Moves the state forward by what any terminal has written since.</summary>
    public void Follow() => throw new NotImplementedException();

    /// <summary>Appends one record (after adopting the files, when the journal is empty) and moves the state forward.</summary>
    /// <exception cref="JournalException">Nothing was saved.</exception>
    public JournalRecord Write(RecordBody body, DateTimeOffset at, string by) => throw new NotImplementedException();
}

/// <summary>A calculation and where it comes from.</summary>
/// <param name="PlugIn">Name and version of the plug-in: <c>Slaking 0.1.0</c>.</param>
public sealed record LoadedCalculation(ICalculation Calculation, string PlugIn);
