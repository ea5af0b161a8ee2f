using System.Globalization;
using Logbook.Checks;
using Logbook.Contracts;

namespace Logbook.Testing;

/// <summary>
/// As <see cref="InlineGuard"/>, on a thread that is given up when it does not come back: a test run does not hang. Time in which
/// the whole process stood still, in a debugger say, does not count.
/// </summary>
internal sealed class BenchGuard(TimeSpan deadline) : IGuard
{
    private static readonly TimeSpan Slice = TimeSpan.FromMilliseconds(100);

    public T Run<T>(Func<GuardedCall, T> pass)
    {
        var work = Task.Factory.StartNew(() => new InlineGuard().Run(pass), CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default);
        for (var waited = TimeSpan.Zero; waited < deadline; waited += Slice)
        {
            if (Task.WaitAny([work], Slice) == 0)
            {
                return work.GetAwaiter().GetResult();
            }
        }

        throw new BenchException(string.Create(CultureInfo.InvariantCulture, $"it takes longer than {deadline.TotalSeconds:0.###} s; the program leaves out what an entry has to wait for more than 2 s"));
    }
}
