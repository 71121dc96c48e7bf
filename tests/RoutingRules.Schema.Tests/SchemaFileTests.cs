using RoutingRules.Reading;

namespace RoutingRules.Schema.Tests;

public sealed class SchemaFileTests
{
    public static TheoryData<SchemaKind> Kinds => [.. Enum.GetValues<SchemaKind>()];

    [Theory]
    [MemberData(nameof(Kinds))]
    public void The_published_file_is_what_the_tables_say(SchemaKind kind)
    {
        var path = Path.Combine(Repository.Schemas, SchemaGenerator.FileName(kind));
        var published = File.Exists(path) ? File.ReadAllText(path) : "";

        Assert.True(
            published == SchemaGenerator.Generate(kind),
            $"{SchemaGenerator.FileName(kind)} is out of date; write it anew with: dotnet run --project src/RoutingRules.Cli -- schemas schema");
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void The_package_carries_the_published_file(SchemaKind kind) =>
        Assert.Equal(File.ReadAllText(Path.Combine(Repository.Schemas, SchemaGenerator.FileName(kind))), RoutingSchemas.Text(kind));

    [Fact]
    public void Ids_and_names_tell_kind_and_version()
    {
        Assert.Equal("urn:routing-rules:show:1", SchemaGenerator.Id(SchemaKind.Show));
        Assert.Equal("urn:routing-rules:device-profile:1", SchemaGenerator.Id(SchemaKind.DeviceProfile));
        Assert.Equal("config.schema.json", SchemaGenerator.FileName(SchemaKind.Config));
        Assert.Contains("\"$id\": \"urn:routing-rules:report:1\"", RoutingSchemas.Report, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => SchemaGenerator.Generate((SchemaKind)9));
    }
}
