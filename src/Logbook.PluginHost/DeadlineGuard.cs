using System.Globalization;
using Logbook.Contracts;

namespace Logbook.PluginHost;

/// <summary>
/// Runs an entry's calculations on one background thread with one deadline. A calculation that crashes, or answers with
/// what is no answer, gives <see cref="Failed"/>; the one that used up the time is switched off and the pass is run again.
/// A thread that never comes back can only be abandoned: it ends with the program.
/// </summary>
public sealed class DeadlineGuard(TimeSpan deadline) : IGuard
{
    /// <summary>Passes in which a calculation may fail before it is switched off for this run of the program.</summary>
    private const int FailuresAllowed = 3;

    /// <summary>Long enough for any calculation on a slow machine, short enough for a person who waits.</summary>
    internal static readonly TimeSpan Usual = TimeSpan.FromSeconds(2);

    private readonly Lock _lock = new();
    private readonly Dictionary<string, int> _failures = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string> _switchedOff = new(StringComparer.Ordinal);

    /// <summary>A guard with the deadline of two seconds.</summary>
    public DeadlineGuard()
        : this(Usual)
    {
    }

    internal static string Seconds(TimeSpan time) => time.TotalSeconds.ToString("0.###' s'", CultureInfo.InvariantCulture);

    public T Run<T>(Func<GuardedCall, T> pass)
    {
        while (true)
        {
            var watch = new PassWatch();
            var thread = PassThread.Take();
            var work = thread.Start(() => OnItsThread(pass, watch));
            if (Task.WaitAny([work], deadline) == 0 || watch.Abandon() is not { } culprit)
            {
                Task.WaitAny([work]);
                thread.GiveBack();
                CountFailures(watch);
                return work.GetAwaiter().GetResult(); // also rethrows what the pass itself threw: that is no plug-in's fault
            }

            thread.Leave();
            SwitchOff(culprit, $"took longer than {Seconds(deadline)}");
        }
    }

    private T OnItsThread<T>(Func<GuardedCall, T> pass, PassWatch watch)
    {
        CultureInfo.CurrentCulture = CultureInfo.CurrentUICulture = CultureInfo.InvariantCulture;
        return pass((calculation, inputs) => Call(calculation, inputs, watch));
    }

    private Outcome Call(ICalculation calculation, Inputs inputs, PassWatch watch)
    {
        var id = calculation.Info.Id;
        lock (_lock)
        {
            if (_switchedOff.TryGetValue(id, out var why))
            {
                return new Failed(why);
            }
        }

        watch.Begin(calculation);
        var (outcome, crash) = PluginCode.Call(() => OutcomeVetting.Vet(calculation.Info, calculation.Run(inputs)));
        watch.End();
        var failure = crash ?? (outcome as Failed)?.Sentence;
        if (failure is null)
        {
            return outcome!;
        }

        watch.Failed.Add(id);
        return new Failed($"{Named(calculation)} failed: {failure}");
    }

    private void CountFailures(PassWatch watch)
    {
        foreach (var id in watch.Failed)
        {
            lock (_lock)
            {
                _failures[id] = _failures.GetValueOrDefault(id) + 1;
                if (_failures[id] >= FailuresAllowed)
                {
                    _switchedOff.TryAdd(id, $"{id} failed {FailuresAllowed} times and is switched off until the program is started again");
                }
            }
        }
    }

    private void SwitchOff(ICalculation culprit, string why)
    {
        lock (_lock)
        {
            _switchedOff[culprit.Info.Id] = $"{Named(culprit)} failed: it {why} and is switched off until the program is started again";
        }
    }

    private static string Named(ICalculation calculation) =>
        calculation is LoadedCode code ? $"plug-in {code.PlugIn}, {code.Info.Id}" : $"plug-in {calculation.Info.Id}";
}
