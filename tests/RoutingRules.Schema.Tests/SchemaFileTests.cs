using RoutingRules.Documents;
using RoutingRules.Documents.Formats;
using RoutingRules.Reports.Schemas;

namespace RoutingRules.Schema.Tests;

public sealed class SchemaFileTests
{
    private static readonly Json.Schema.JsonSchema RuleOptions = Json.Schema.JsonSchema.FromText(
        File.ReadAllText(Path.Combine(Repository.At("schema"), "rule-options.schema.json"))
    );

    public static TheoryData<SchemaKind> Kinds => [.. Enum.GetValues<SchemaKind>()];

    [Theory]
    [MemberData(nameof(Kinds))]
    public void The_published_file_is_what_the_tables_say(SchemaKind kind)
    {
        var path = Path.Combine(Repository.At("schema"), SchemaGenerator.FileName(kind));
        var published = File.Exists(path) ? File.ReadAllText(path) : "";

        Assert.True(
            published == SchemaGenerator.Generate(kind),
            $"{SchemaGenerator.FileName(kind)} is out of date; write it anew with: dotnet run --project src/RoutingRules.Cli -- schemas schema"
        );
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void The_package_carries_the_published_file(SchemaKind kind) =>
        Assert.Equal(File.ReadAllText(Path.Combine(Repository.At("schema"), SchemaGenerator.FileName(kind))), RoutingSchemas.Text(kind));

    [Fact]
    public void Ids_and_names_tell_kind_and_version()
    {
        Assert.Equal("urn:routing-rules:show:1", SchemaGenerator.Id(SchemaKind.Show));
        Assert.Equal("urn:routing-rules:device-profile:1", SchemaGenerator.Id(SchemaKind.DeviceProfile));
        Assert.Equal("config.schema.json", SchemaGenerator.FileName(SchemaKind.Config));
        Assert.Contains("\"$id\": \"urn:routing-rules:report:1\"", RoutingSchemas.Report, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => SchemaGenerator.Generate((SchemaKind)99));
    }

    [Theory]
    [InlineData(
        """{ "schemaVersion": 1, "rules": [ { "rule": "RR3*", "severity": "note" }, { "rule": "RR2003", "enabled": false },"""
            + """ { "rule": "output-orphaned" } ] }""",
        true
    )]
    [InlineData("""{ "schemaVersion": 1, "rules": [ { "rule": "RR9999" } ] }""", false)]
    [InlineData("""{ "schemaVersion": 1, "rules": [ { "rule": "RR1001" } ] }""", false)]
    [InlineData("""{ "schemaVersion": 1, "rules": [ { "rule": "RR2003", "options": [ { "name": "unheard-of", "value": 1 } ] } ] }""", false)]
    public void The_schema_of_rule_options_takes_what_an_engine_takes(string config, bool expected)
    {
        using var document = System.Text.Json.JsonDocument.Parse(config);
        var builder = RoutingEngine.CreateBuilder().UseConfig(ConfigReader.Read(System.Text.Encoding.UTF8.GetBytes(config)).Value!);

        Assert.Equal(expected, RuleOptions.Evaluate(document.RootElement).IsValid);
        Assert.Equal(expected, builder.FindConfigProblems().IsEmpty);
    }
}
