namespace Logbook.Contracts;

/// <summary>Runs one calculation inside a guarded pass: whatever the plug-in does, an outcome comes back.</summary>
public delegate Outcome GuardedCall(ICalculation calculation, Inputs inputs);

/// <summary>Runs the calculations of one entry under one deadline, so that no plug-in can hold up or bring down a save.</summary>
public interface IGuard
{
    /// <summary>
    /// Runs <paramref name="pass"/> on a thread of its own. A pass that overruns the deadline is abandoned, the
    /// calculation that was running is switched off for this run of the program, and the pass is run again without it.
    /// </summary>
    T Run<T>(Func<GuardedCall, T> pass);
}
