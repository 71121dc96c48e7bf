using System.Text;
using RoutingRules.Configuration;
using RoutingRules.Documents;
using RoutingRules.Engine.Configuration;
using RoutingRules.Model;
using RoutingRules.Rules;
using RoutingRules.Tests.Reports;

namespace RoutingRules.Tests.Engine.Configuration;

public sealed class ConfigLoaderTests
{
    private static readonly RuleDescriptor Tuned = ReportSamples.Rule("RR7001", Severity.Note) with
    {
        Options =
        [
            new()
            {
                Name = "most",
                Doc = "D.",
                Default = 4,
                Minimum = 1,
                Maximum = 9,
                IsWhole = true,
            },
        ],
    };

    private static ConfigLoad Load(string path, params (string Path, string Text)[] files) =>
        ConfigLoader.Load(
            path,
            name =>
                files.FirstOrDefault(file => file.Path == name) is { Text: { } text }
                    ? new DocumentFile { Path = name, Utf8 = Encoding.UTF8.GetBytes(text) }
                    : DocumentFile.Load(Path.Combine("no-such-folder", name))
        );

    [Fact]
    public void Later_files_win_member_by_member_and_the_file_itself_over_all()
    {
        var load = Load(
            "crew/top.json",
            (
                "crew/a.json",
                """{ "schemaVersion": 1, "failOn": "error", "rules": [ { "rule": "X1", "severity": "note" } ], "assignment": { "spares": 1,"""
                    + """ "headroom": 1, "latencyMilliseconds": 9 } }"""
            ),
            ("crew/b.json", """{ "schemaVersion": 1, "rules": [ { "rule": "X1", "severity": "error" } ], "assignment": { "spares": 2 } }"""),
            (
                "crew/top.json",
                """{ "schemaVersion": 1, "extends": [ "a.json", "b.json" ], "rules": [ { "rule": "X2", "enabled": false } ],"""
                    + """ "assignment": { "keepUnlisted": true } }"""
            )
        );

        Assert.Empty(load.Problems);
        Assert.Equal(
            new EngineConfig
            {
                FailOn = Severity.Error,
                Rules =
                [
                    new() { Rule = "X1", Severity = Severity.Note },
                    new() { Rule = "X1", Severity = Severity.Error },
                    new() { Rule = "X2", Enabled = false },
                ],
                Assignment = new AssignmentConfig
                {
                    Spares = 2,
                    Headroom = 1,
                    LatencyMilliseconds = 9,
                    KeepUnlisted = true,
                },
            },
            load.Config!.Config
        );
        Assert.Equal(["crew/a.json", "crew/b.json", "crew/top.json"], load.Config.Files);
    }

    [Fact]
    public void A_circle_is_named_from_file_to_file_with_its_place()
    {
        var load = Load(
            "a.json",
            ("a.json", """{ "schemaVersion": 1, "extends": [ "b.json" ] }"""),
            ("b.json", """{ "schemaVersion": 1, "extends": [ "c.json" ] }"""),
            ("c.json", "{ \"schemaVersion\": 1,\n  \"extends\": [ \"b.json\" ] }")
        );
        var problem = Assert.Single(load.Problems);

        Assert.Null(load.Config);
        Assert.Equal("c.json", problem.Path);
        Assert.Equal((2, 16), (problem.Finding.Line, problem.Finding.Column));
        Assert.Contains("b.json → c.json → b.json", problem.Finding.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void The_same_file_reached_by_two_ways_is_no_circle() =>
        Assert.Empty(
            Load(
                "a.json",
                ("a.json", """{ "schemaVersion": 1, "extends": [ "b.json", "c.json" ] }"""),
                ("b.json", """{ "schemaVersion": 1, "extends": [ "c.json" ] }"""),
                ("c.json", """{ "schemaVersion": 1 }""")
            ).Problems
        );

    [Fact]
    public void Problems_of_every_file_are_told_together()
    {
        var load = Load(
            "a.json",
            ("a.json", """{ "schemaVersion": 1, "extends": [ "b.json", "missing.json" ] }"""),
            ("b.json", """{ "schemaVersion": 1, "failOn": "never" }""")
        );

        Assert.Equal(["b.json", "missing.json"], load.Problems.Select(problem => problem.Path));
    }

    [Fact]
    public void A_value_that_doubles_with_every_file_does_not_run_away()
    {
        // Each file names the next one twice: 2 to the power of 40 ways.
        var files = Enumerable
            .Range(0, 40)
            .Select(i => ($"{i}.json", $$"""{ "schemaVersion": 1, "extends": [ "{{i + 1}}.json", "{{i + 1}}.json" ] }"""))
            .Append(("40.json", """{ "schemaVersion": 1 }"""))
            .ToArray();

        Assert.Contains("more than 64 files", Load("0.json", files).Problems[0].Finding.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_value_of_a_rule_is_explained_with_file_and_line()
    {
        var config = Load(
            "top.json",
            (
                "base.json",
                "{ \"schemaVersion\": 1, \"failOn\": \"note\",\n  \"rules\": [\n    { \"rule\": \"RR7*\", \"severity\": \"warning\",\n      "
                    + "\"options\": [ { \"name\": \"most\", \"value\": 6 } ] } ] }"
            ),
            ("top.json", "{ \"schemaVersion\": 1, \"extends\": [ \"base.json\" ],\n  \"rules\": [ { \"rule\": \"rr7001\", \"severity\": \"error\" } ] }")
        ).Config!;

        Assert.Equal(
            [("enabled", "true", null), ("severity", "error", "top.json:2:46"), ("most", "6", "base.json:4:47"), ("failOn", "note", "base.json:1:33")],
            config.Explain(Tuned).Select(value => (value.Name, value.Value, value.Place))
        );
        Assert.Equal(
            [("enabled", "true", null), ("severity", "note", null), ("most", "4", null), ("failOn", "warning", null)],
            LoadedConfig.Usual.Explain(Tuned).Select(value => (value.Name, value.Value, value.Place))
        );
    }

    [Fact]
    public void A_star_selects_every_rule_whose_id_begins_so()
    {
        var engine = RoutingEngine
            .CreateBuilder()
            .UseConfig(new EngineConfig { Rules = [new() { Rule = "RR3*", Enabled = false }, new() { Rule = "RR3004", Enabled = true }] })
            .Build();
        var off = engine.Check(Testing.SmallShow.Of(("a", Testing.SmallProfiles.Box))).Rules.Select(outcome => outcome.Descriptor.Id).ToList();

        Assert.Equal(engine.Rules.Select(rule => rule.Descriptor.Id).Where(id => !id.StartsWith("RR3", StringComparison.Ordinal) || id == "RR3004"), off);
    }

    [Theory]
    [InlineData("XX*", "no id begins so", "/rules/0/rule")]
    [InlineData("RR100*", "always counts", "/rules/0/rule")]
    [InlineData("RR1011", "always counts", "/rules/0/rule")]
    public void A_selector_without_rules_is_a_problem_with_its_pointer(string selector, string expected, string pointer)
    {
        var problem = Assert.Single(RoutingEngine.CreateBuilder().UseConfig(new EngineConfig { Rules = [new() { Rule = selector }] }).FindConfigProblems());

        Assert.Contains(expected, problem.Message, StringComparison.Ordinal);
        Assert.Equal(pointer, problem.Pointer);
    }

    [Fact]
    public void An_option_is_checked_for_every_rule_that_a_star_selects()
    {
        var plain = new TunedRule(ReportSamples.Rule("ZZ7002", Severity.Note));
        var tuned = new TunedRule(Tuned with { Id = "ZZ7001" });
        ValueList<Finding> Problems(string name, double value) =>
            RoutingEngine
                .CreateBuilder()
                .AddRule(tuned)
                .AddRule(plain)
                .UseConfig(new EngineConfig { Rules = [new() { Rule = "ZZ*", Options = [new() { Name = name, Value = value }] }] })
                .FindConfigProblems();

        Assert.Empty(Problems("most", 9));
        Assert.Equal("/rules/0/options/0/value", Assert.Single(Problems("most", 10)).Pointer);
        Assert.Contains("from 1 to 9, usually 4", Problems("most", 2.5)[0].Message, StringComparison.Ordinal);
        Assert.Equal("/rules/0/options/0/name", Assert.Single(Problems("least", 1)).Pointer);
    }

    [Fact]
    public void An_engine_refuses_a_configuration_whose_base_was_not_loaded() =>
        Assert.Contains(
            "have to be loaded",
            Assert.Throws<InvalidOperationException>(RoutingEngine.CreateBuilder().UseConfig(new EngineConfig { Extends = ["a.json"] }).Build).Message,
            StringComparison.Ordinal
        );

    private sealed class TunedRule(RuleDescriptor descriptor) : Rule<RoutingRules.Resolving.DeviceNode>
    {
        public override RuleDescriptor Descriptor { get; } = descriptor;

        public override void Check(RuleContext context, RoutingRules.Resolving.DeviceNode subject) { }
    }
}
