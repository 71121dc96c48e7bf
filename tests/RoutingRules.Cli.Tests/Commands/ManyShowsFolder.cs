using System.Text;
using RoutingRules.Cli.Tests.Rig;
using RoutingRules.Plugins;
using RoutingRules.Rules;

namespace RoutingRules.Cli.Tests.Commands;

/// <summary>A folder of shows and the command that checks them.</summary>
internal sealed class ManyShowsFolder : IDisposable
{
    public static readonly RoutingPlugin Plugin = TestRule.Reports("TT1001", Severity.Error);

    public ManyShowsFolder() => Folder.Write("quiet.json", QuietConfig.Text());

    public TempFolder Folder { get; } = new();

    public void Dispose() => Folder.Dispose();

    public static string One(string device) =>
        $$"""{ "schemaVersion": 1, "title": "T", "rig": { "devices": [ { "id": "{{device}}", "profile": "generic/amplifier-4" } ] } }""";

    public static byte[] Bytes(string text) => Encoding.UTF8.GetBytes(text);

    public ToolResult Check(byte[] input, params string[] arguments) =>
        Tool.Run(["check", .. arguments, "--config", Folder.At("quiet.json")], input, default, Plugin);
}
