namespace RoutingRules.Cli.Tests.Rig;

/// <summary>The folder of the project, found by its solution.</summary>
internal static class Repository
{
    public static string Root { get; } = Find(AppContext.BaseDirectory);

    public static string At(params string[] parts) => Path.Join([Root, .. parts]);

    private static string Find(string folder) => File.Exists(Path.Join(folder, "RoutingRules.sln")) ? folder : Find(Path.GetDirectoryName(folder)!);
}
