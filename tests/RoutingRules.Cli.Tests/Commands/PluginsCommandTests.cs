using System.Text.Json;
using RoutingRules.Cli.Tests.Rig;
using RoutingRules.Model;
using RoutingRules.Plugins;
using RoutingRules.Profiles;

namespace RoutingRules.Cli.Tests.Commands;

public sealed class PluginsCommandTests : IDisposable
{
    private readonly TempFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public void What_is_built_in_is_listed()
    {
        var result = Tool.Run("plugins").Civil();

        Assert.Equal(0, result.Code);
        Assert.Contains("strategies  2: exact, greedy\n", result.Out, StringComparison.Ordinal);
        Assert.Contains("formats     7: text, json", result.Out, StringComparison.Ordinal);
        Assert.Contains("No plugin is loaded", result.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void A_named_plugin_is_listed_with_what_it_brings()
    {
        var text = Tool.Run("plugins", "--plugin", PluginFiles.Template).Civil();
        var json = Tool.Run("plugins", "--plugin", PluginFiles.Template, "--plugin", PluginFiles.CpSat, "--format", "json").Civil();

        Assert.EndsWith(
            "template 0.1.0: A plugin to start from\n  rules       1: TP1001 device-without-zone\n  profiles    1: template/stage-box-tiny\n",
            text.Out,
            StringComparison.Ordinal
        );
        using var document = JsonDocument.Parse(json.OutBytes);
        var plugins = document.RootElement.GetProperty("plugins").EnumerateArray().ToList();
        Assert.Equal(["template", "strategies-cp-sat"], plugins.Select(plugin => plugin.GetProperty("id").GetString()));
        Assert.Equal("TP1001", plugins[0].GetProperty("rules")[0].GetString());
        Assert.Equal("cp-sat", plugins[1].GetProperty("strategies")[0].GetString());
        Assert.True(document.RootElement.GetProperty("builtIn").GetProperty("rules").GetArrayLength() > 90);
    }

    [Fact]
    public void Commands_use_what_a_plugin_brings()
    {
        var show = folder.Write("a.show.json", Shows.Small.Replace("generic/stage-box-small", "template/stage-box-tiny", StringComparison.Ordinal));

        Assert.Contains("TP1001", Tool.Run("rules", "--plugin", PluginFiles.Template).Civil().Out, StringComparison.Ordinal);
        Assert.Contains("template/stage-box-tiny", Tool.Run("profiles", "--plugin", PluginFiles.Template).Civil().Out, StringComparison.Ordinal);
        Assert.DoesNotContain("template", Tool.Run("profiles").Civil().Out, StringComparison.Ordinal);
        foreach (var command in new[] { "check", "fix", "assign", "sheet", "impact" })
        {
            var result = Tool.Run(command, show, "--plugin", PluginFiles.Template);
            Assert.True(result.Code is 0 or 1, $"{command}: {result.Error}");
            Assert.DoesNotContain("RR1105", result.Out + result.Error, StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("01-smallest.show.json")]
    [InlineData("02-club-night.show.json")]
    public void A_strategy_with_a_native_library_is_loaded_and_is_as_good_as_the_usual_one(string name)
    {
        var show = Repository.At("schema", "examples", name);
        var usual = Tool.Run("assign", show, "--out", folder.At("a.show.json"), "--format", "json").Civil();
        var other = Tool.Run("assign", show, "--out", folder.At("b.show.json"), "--format", "json", "--plugin", PluginFiles.CpSat, "--strategy", "cp-sat")
            .Civil();

        Assert.True(other.Code == 0, other.Error);
        Assert.Equal(Objective(usual), Objective(other));
        Assert.Equal(File.ReadAllBytes(folder.At("a.show.json")), File.ReadAllBytes(folder.At("b.show.json")));
    }

    [Fact]
    public void What_cannot_be_loaded_is_named_with_a_remedy()
    {
        PluginFiles.WriteThrowing(folder.At("Throwing.dll"));
        PluginFiles.WriteNewer(folder.At("Newer.dll"));
        var text = folder.Write("text.dll", "no assembly");
        var copy = folder.Write("Copy.dll", File.ReadAllBytes(PluginFiles.Template));
        (string[] Paths, string Expected)[] cases =
        [
            (["none.dll"], "there is no file 'none.dll' to load a plugin from; check the path."),
            ([folder.Root], "is a folder; name the assembly file"),
            ([""], "the path after --plugin is empty"),
            ([text], $"'{text}' is no .NET assembly; name the plugin's own .dll file."),
            ([typeof(FactAttribute).Assembly.Location], "holds no plugin: no public class in it derives from RoutingRules.Plugins.RoutingPlugin"),
            ([folder.At("Newer.dll")], "was built for RoutingRules.Abstractions 9.0.0.0, and this program has"),
            ([folder.At("Throwing.dll")], "the plugin Throwing.Faulty failed while it was made: broken on purpose. Leave it out"),
            ([PluginFiles.Template, copy], $"'{PluginFiles.Template}' and '{copy}' both hold a plugin with the id 'template'; name one of them."),
            ([PluginFiles.Template, PluginFiles.Template], "is named twice"),
        ];
        foreach (var (paths, expected) in cases)
        {
            var result = Tool.Run(["check", "-", .. paths.SelectMany(path => new[] { "--plugin", path })]).Civil();

            Assert.Equal(2, result.Code);
            Assert.Equal("", result.Out);
            Assert.Contains(expected, result.Error, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void A_plugin_that_fails_later_is_named_as_well()
    {
        var failing = Tool.Run(["check", "-"], [], default, new Failing()).Civil();
        var empty = Tool.Run(["profiles"], [], default, new Empty()).Civil();

        Assert.Equal((2, 2), (failing.Code, empty.Code));
        Assert.Contains("the plugin 'failing' failed while it added what it brings: broken on purpose. Leave it out", failing.Error, StringComparison.Ordinal);
        Assert.Contains("a plugin brings the profile 'empty/one', which cannot be read: The file is empty.", empty.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Help_loads_nothing_and_commands_without_an_engine_take_none()
    {
        Assert.Equal(0, Tool.Run("check", "--plugin", "none.dll", "--help").Civil().Code);
        Assert.Contains("--plugin FILE", Tool.Run("why", "--help").Civil().Out, StringComparison.Ordinal);
        Assert.Equal(2, Tool.Run("upgrade", "a", "--plugin", PluginFiles.Template).Civil().Code);
    }

    private static string Objective(ToolResult result)
    {
        using var document = JsonDocument.Parse(result.OutBytes);
        return document.RootElement.GetProperty("assignment").GetProperty("objective").GetRawText();
    }

    private sealed class Failing : RoutingPlugin
    {
        public override PluginInfo Info =>
            new()
            {
                Id = "failing",
                Version = "1.0.0",
                Title = "Fails",
            };

        public override void Register(PluginRegistry registry) => throw new InvalidOperationException("broken on purpose");
    }

    private sealed class Empty : RoutingPlugin
    {
        public override PluginInfo Info =>
            new()
            {
                Id = "empty",
                Version = "1.0.0",
                Title = "Brings a profile without text",
            };

        public override void Register(PluginRegistry registry) => registry.AddProfiles(new Source());

        private sealed class Source : ProfileSource
        {
            public override string Name => "empty";

            public override IReadOnlyList<Id<DeviceProfile>> Ids => [new("empty/one")];

            public override bool TryFind(Id<DeviceProfile> id, out ReadOnlyMemory<byte> json)
            {
                json = default;
                return id.Value == "empty/one";
            }
        }
    }
}
