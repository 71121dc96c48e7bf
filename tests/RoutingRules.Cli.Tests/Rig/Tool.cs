using RoutingRules.Plugins;

namespace RoutingRules.Cli.Tests.Rig;

/// <summary>Runs the tool inside the test process.</summary>
internal static class Tool
{
    public static ToolResult Run(params string[] arguments) => Run(arguments, []);

    public static ToolResult Run(string[] arguments, byte[] input, CancellationToken cancellation = default, params RoutingPlugin[] plugins) =>
        Run(arguments, new MemoryStream(input), cancellation, plugins);

    public static ToolResult Run(string[] arguments, Stream input, CancellationToken cancellation = default, params RoutingPlugin[] plugins)
    {
        using var output = new MemoryStream();
        using var error = new StringWriter { NewLine = "\n" };
        var code = CliRunner.Run(arguments, new CliConsole(input, output, error) { Plugins = plugins }, cancellation);
        return new ToolResult(code, output.ToArray(), error.ToString());
    }
}
