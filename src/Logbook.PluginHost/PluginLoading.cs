using System.Globalization;
using System.Reflection;
using System.Runtime.Loader;
using Logbook.Contracts;
using McMaster.NETCore.Plugins.Loader;

namespace Logbook.PluginHost;

/// <summary>Loads a vetted assembly into a room of its own, with the contracts alone in common, and makes its calculations.</summary>
internal static class PluginLoading
{
    /// <summary>
    /// A constructor is a plug-in's first code that runs: on the passes' thread, with the deadline of an entry's pass. One that
    /// never comes back is left behind, and ends with the program.
    /// </summary>
    public static PluginReport Load(string assembly, string name, string version)
    {
        var making = new Making();
        var thread = PassThread.Take();
        var work = thread.Start(() => PluginCode.Call(() => Instantiate(assembly, name, making)));
        while (Task.WaitAny([work], DeadlineGuard.Usual) < 0)
        {
            // Before a class of its own is made the machine is slow, and there is nobody to blame.
            if (making.Class is { } slow)
            {
                thread.Leave();
                return PluginReport.Of(PluginTrouble.Failed("load", $"making its class {FolderVetting.Visible(slow)} takes longer than {DeadlineGuard.Seconds(DeadlineGuard.Usual)}"), name, version);
            }
        }

        thread.GiveBack();
        var (calculations, crash) = work.GetAwaiter().GetResult();
        var trouble = crash is null ? InfoVetting.Trouble(calculations!) : PluginTrouble.Failed("load", crash);
        return trouble is null
            ? new PluginReport(name, version, "loaded", "", "", calculations!)
            : PluginReport.Of(trouble, name, version);
    }

    private static List<LoadedCode> Instantiate(string assembly, string name, Making making)
    {
        CultureInfo.CurrentCulture = CultureInfo.CurrentUICulture = CultureInfo.InvariantCulture;

        // The builder, not PluginLoader: that one reads the program's run-time configuration anew for every plug-in, which costs
        // more than all the rest. Lazy, because the contracts' own references are the framework's and need no walk.
        var room = new AssemblyLoadContextBuilder()
            .SetMainAssemblyPath(assembly)
            .SetDefaultContext(AssemblyLoadContext.GetLoadContext(typeof(ICalculation).Assembly)!)
            .PreferDefaultLoadContextAssembly(typeof(ICalculation).Assembly.GetName())
            .IsLazyLoaded(true)
            .Build();
        var made = new List<LoadedCode>();
        foreach (var type in room.LoadFromAssemblyPath(assembly).GetExportedTypes())
        {
            if (type.IsAssignableTo(typeof(ICalculation)) && !type.IsAbstract)
            {
                making.Class = type.Name;
                made.Add(Make(type, name));
            }
        }

        made.Sort((a, b) => string.CompareOrdinal(a.Info.Id, b.Info.Id));
        return made;
    }

    private static LoadedCode Make(Type type, string name)
    {
        var constructor = type.GetConstructor(Type.EmptyTypes)
            ?? throw new MissingMethodException($"{type.Name} has no public constructor without parameters");
        var code = (ICalculation)constructor.Invoke(BindingFlags.DoNotWrapExceptions, binder: null, parameters: null, culture: null);
        return new LoadedCode(code, code.Info ?? throw new InvalidOperationException($"{type.Name} has no Info"), name);
    }

    /// <summary>The class that is being made, for whoever waits for it.</summary>
    private sealed class Making
    {
        private volatile string? _class;

        public string? Class { get => _class; set => _class = value; }
    }
}

/// <summary>A plug-in's calculation with what it said about itself at loading, so that asking for it runs no foreign code.</summary>
internal sealed class LoadedCode(ICalculation code, CalculationInfo info, string plugIn) : ICalculation
{
    public CalculationInfo Info => info;

    public string PlugIn => plugIn;

    public Outcome Run(Inputs inputs) => code.Run(inputs);
}
