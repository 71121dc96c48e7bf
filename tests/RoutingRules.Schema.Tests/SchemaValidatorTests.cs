using System.Text;
using RoutingRules.Documents.Formats;

namespace RoutingRules.Schema.Tests;

public sealed class SchemaValidatorTests
{
    [Theory]
    [InlineData(
        """{"schemaVersion":1,"title":"t","rig":{"zones":[{"id":"a"},{"id":"a b"}]}}""",
        "/rig/zones/1/id",
        "The text is not in the form that the schema's pattern gives."
    )]
    [InlineData("""{"schemaVersion":1,"title":"t","rig":{"devices":[{"id":"a"}]}}""", "/rig/devices/0/profile", "This member is missing.")]
    [InlineData("""{"schemaVersion":1,"title":"t","rig":{},"a.b[0]/~":1}""", "/a.b[0]~1~0", "The format has no such member here.")]
    [InlineData("""{"schemaVersion":2,"title":"t","rig":{}}""", "/schemaVersion", "The value is not one of those that the schema lists.")]
    [InlineData("""{"schemaVersion":1,"title":"t","rig":7}""", "/rig", "An object belongs here.")]
    public void A_departure_is_named_by_pointer_and_reason(string text, string pointer, string message)
    {
        var problem = Assert.Single(Validate(text));

        Assert.Equal((pointer, message), (problem.Pointer, problem.Message));
    }

    [Theory]
    [InlineData("")]
    [InlineData("{'title':1}")]
    [InlineData("""{"title":"t",}""")]
    [InlineData("""{"title":"t"/* remark */}""")]
    [InlineData("""{"title":NaN}""")]
    [InlineData("""{"title":"t","title":"t"}""")]
    [InlineData("""{"title":"t"}{}""")]
    public void What_only_a_lax_parser_takes_is_refused(string text) =>
        Assert.StartsWith("The text cannot be read as JSON", Assert.Single(Validate(text)).Message, StringComparison.Ordinal);

    [Fact]
    public void A_document_that_is_no_object_is_so_named_at_the_root() =>
        Assert.Contains(Validate("[]"), problem => problem is { Pointer: "", Message: "An object belongs here." });

    [Theory]
    [InlineData("""{"schemaVersion":1,"title":"t","rig":{},"extensions":{"\ud800":1}}""")]
    [InlineData("""{"schemaVersion":1,"title":"t","rig":{},"extensions":{"a":{"\udc00x":"\ud800"},"b":123456789012345678901234567890}}""")]
    [InlineData("""{"schemaVersion":1,"title":"t","rig":{},"extensions":{"a":-1234567890123456789012345678901234567890,"b":1e999,"c":0.1e-999}}""")]
    public void What_other_tools_keep_is_theirs(string text) => Assert.Empty(Validate(text));

    [Theory]
    [InlineData("""{"schemaVersion":123456789012345678901234567890,"title":"t","rig":{}}""", "/schemaVersion")]
    [InlineData("""{"schemaVersion":1,"title":"t","rig":{"clocks":[{"id":"c","sampleRate":99999999999999999999,"leader":"d"}]}}""", "/rig/clocks/0/sampleRate")]
    [InlineData(
        """{"schemaVersion":1,"title":"t","rig":{"clocks":[{"id":"c","sampleRate":-99999999999999999999,"leader":"d"}]}}""",
        "/rig/clocks/0/sampleRate"
    )]
    [InlineData(
        """{"schemaVersion":1,"title":"t","rig":{"links":[{"id":"l","network":"n","from":"a/b/1","to":"c/d/1","medium":"coax","lengthMetres":1e999}]}}""",
        "/rig/links/0/lengthMetres"
    )]
    [InlineData("""{"schemaVersion":1,"title":"t","rig":{"\ud800":1}}""", "/rig")]
    [InlineData("""{"schemaVersion":1,"title":"t","\ud800":{"zones":[{"id":"a b"}]},"rig":{}}""", "")]
    public void Numbers_beyond_64_bits_and_names_that_are_no_text_are_problems_at_their_place(string text, string pointer)
    {
        var problems = Validate(text);

        Assert.NotEmpty(problems);
        Assert.All(problems, problem => Assert.StartsWith(pointer, problem.Pointer, StringComparison.Ordinal));
    }

    [Fact]
    public void A_depth_bomb_is_refused() => Assert.Single(Validate(new string('[', 100_000)));

    [Fact]
    public void Departures_come_in_the_order_of_their_pointers() =>
        Assert.Equal(["/rig", "/schemaVersion", "/title"], Validate("{}").Select(problem => problem.Pointer));

    [Fact]
    public void A_kind_that_is_none_is_a_wrong_call() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => SchemaValidator.Validate((SchemaKind)99, ReadOnlyMemory<byte>.Empty));

    private static IReadOnlyList<SchemaProblem> Validate(string text) => SchemaValidator.Validate(SchemaKind.Show, Encoding.UTF8.GetBytes(text));
}
