using System.Text;
using System.Text.Json.Nodes;
using RoutingRules.Fixing;

namespace RoutingRules.Tests.Fixing;

/// <summary>The examples of RFC 6902, appendix A (from memory), and the pointers of RFC 6901, section 5 (from memory).</summary>
public sealed class JsonPatchTests
{
    [Theory]
    [InlineData("A.1", """{"foo":"bar"}""", """[{"op":"add","path":"/baz","value":"qux"}]""", """{"baz":"qux","foo":"bar"}""")]
    [InlineData("A.2", """{"foo":["bar","baz"]}""", """[{"op":"add","path":"/foo/1","value":"qux"}]""", """{"foo":["bar","qux","baz"]}""")]
    [InlineData("A.3", """{"baz":"qux","foo":"bar"}""", """[{"op":"remove","path":"/baz"}]""", """{"foo":"bar"}""")]
    [InlineData("A.4", """{"foo":["bar","qux","baz"]}""", """[{"op":"remove","path":"/foo/1"}]""", """{"foo":["bar","baz"]}""")]
    [InlineData("A.5", """{"baz":"qux","foo":"bar"}""", """[{"op":"replace","path":"/baz","value":"boo"}]""", """{"baz":"boo","foo":"bar"}""")]
    [InlineData(
        "A.6",
        """{"foo":{"bar":"baz","waldo":"fred"},"qux":{"corge":"grault"}}""",
        """[{"op":"move","from":"/foo/waldo","path":"/qux/thud"}]""",
        """{"foo":{"bar":"baz"},"qux":{"corge":"grault","thud":"fred"}}"""
    )]
    [InlineData(
        "A.7",
        """{"foo":["all","grass","cows","eat"]}""",
        """[{"op":"move","from":"/foo/1","path":"/foo/3"}]""",
        """{"foo":["all","cows","eat","grass"]}"""
    )]
    [InlineData(
        "A.8",
        """{"baz":"qux","foo":["a",2,"c"]}""",
        """[{"op":"test","path":"/baz","value":"qux"},{"op":"test","path":"/foo/1","value":2}]""",
        """{"baz":"qux","foo":["a",2,"c"]}"""
    )]
    [InlineData("A.10", """{"foo":"bar"}""", """[{"op":"add","path":"/child","value":{"grandchild":{}}}]""", """{"foo":"bar","child":{"grandchild":{}}}""")]
    [InlineData("A.11", """{"foo":"bar"}""", """[{"op":"add","path":"/baz","value":"qux","xyz":123}]""", """{"foo":"bar","baz":"qux"}""")]
    [InlineData("A.14", """{"/":9,"~1":10}""", """[{"op":"test","path":"/~01","value":10}]""", """{"/":9,"~1":10}""")]
    [InlineData("A.16", """{"foo":["bar"]}""", """[{"op":"add","path":"/foo/-","value":["abc","def"]}]""", """{"foo":["bar",["abc","def"]]}""")]
    public void Examples_of_the_standard_that_apply(string example, string document, string patch, string expected) =>
        Assert.True(JsonNode.DeepEquals(JsonNode.Parse(expected), Apply(document, patch)), example);

    [Theory]
    [InlineData("A.9", """{"baz":"qux"}""", """[{"op":"test","path":"/baz","value":"bar"}]""")]
    [InlineData("A.12", """{"foo":"bar"}""", """[{"op":"add","path":"/baz/bat","value":"qux"}]""")]
    [InlineData("A.15", """{"/":9,"~1":10}""", """[{"op":"test","path":"/~01","value":"10"}]""")]
    public void Examples_of_the_standard_that_do_not_apply(string example, string document, string patch)
    {
        Assert.NotEmpty(example);
        Assert.Throws<JsonPatchException>(() => Apply(document, patch));
    }

    [Theory]
    [InlineData("""[{"op":"add","path":"/baz","value":"qux","op":"remove"}]""")]
    [InlineData("""[{"op":"spin","path":"/baz"}]""")]
    [InlineData("""[{"op":"add","path":"/baz"}]""")]
    [InlineData("""[{"op":"copy","path":"/baz"}]""")]
    [InlineData("""[{"op":"remove","path":"baz"}]""")]
    [InlineData("""[{"op":"remove","path":"/a~2"}]""")]
    [InlineData("""{"op":"remove","path":"/a"}""")]
    [InlineData("""[1]""")]
    [InlineData("""[""")]
    public void What_is_no_patch_is_refused(string patch) => Assert.Throws<FormatException>(() => JsonPatch.Parse(Encoding.UTF8.GetBytes(patch)));

    [Theory]
    [InlineData("", """{"foo":["bar","baz"],"":0,"a/b":1,"c%d":2,"e^f":3,"g|h":4,"i\\j":5,"k\"l":6," ":7,"m~n":8}""")]
    [InlineData("/foo", """["bar","baz"]""")]
    [InlineData("/foo/0", "\"bar\"")]
    [InlineData("/", "0")]
    [InlineData("/a~1b", "1")]
    [InlineData("/c%d", "2")]
    [InlineData("/e^f", "3")]
    [InlineData("/g|h", "4")]
    [InlineData("/i\\\\j", "5")]
    [InlineData("/k\\\"l", "6")]
    [InlineData("/ ", "7")]
    [InlineData("/m~0n", "8")]
    public void Pointers_of_the_standard_find_their_values(string pointer, string value)
    {
        const string document = """{"foo":["bar","baz"],"":0,"a/b":1,"c%d":2,"e^f":3,"g|h":4,"i\\j":5,"k\"l":6," ":7,"m~n":8}""";
        Assert.NotNull(Apply(document, $$"""[{"op":"test","path":"{{pointer}}","value":{{value}}}]"""));
        Assert.Throws<JsonPatchException>(() => Apply(document, $$"""[{"op":"test","path":"{{pointer}}","value":"other"}]"""));
    }

    [Theory]
    [InlineData("/foo/01")]
    [InlineData("/foo/2")]
    [InlineData("/foo/-")]
    [InlineData("/foo/-1")]
    [InlineData("/bar")]
    public void A_place_that_is_not_there_cannot_be_replaced(string pointer) =>
        Assert.Throws<JsonPatchException>(() => Apply("""{"foo":[1,2]}""", $$"""[{"op":"replace","path":"{{pointer}}","value":3}]"""));

    [Fact]
    public void A_patch_that_fails_leaves_the_document_alone()
    {
        var document = JsonNode.Parse("""{"foo":"bar"}""");
        var patch = JsonPatch.Parse(Encoding.UTF8.GetBytes("""[{"op":"remove","path":"/foo"},{"op":"test","path":"/foo","value":1}]"""));
        Assert.Throws<JsonPatchException>(() => patch.Apply(document));
        Assert.Equal("""{"foo":"bar"}""", document!.ToJsonString());
    }

    [Fact]
    public void A_value_cannot_be_moved_into_itself_but_copied() =>
        Assert.Equal("""{"a":{"b":1,"c":{"b":1}}}""", Apply("""{"a":{"b":1}}""", """[{"op":"copy","from":"/a","path":"/a/c"}]""")!.ToJsonString());

    [Fact]
    public void Moving_a_value_into_itself_is_refused() =>
        Assert.Throws<JsonPatchException>(() => Apply("""{"a":{"b":1}}""", """[{"op":"move","from":"/a","path":"/a/c"}]"""));

    [Fact]
    public void A_written_patch_can_be_read_again()
    {
        const string text = """[{"op":"test","path":"/a","value":null},{"op":"move","from":"/a","path":"/b"},{"op":"add","path":"/c","value":[1,"x"]}]""";
        var written = JsonPatch.Parse(Encoding.UTF8.GetBytes(text)).ToUtf8();
        Assert.True(JsonNode.DeepEquals(JsonNode.Parse(text), JsonNode.Parse(written)));
        Assert.Equal("""{"b":null,"c":[1,"x"]}""", JsonPatch.Parse(written).Apply(JsonNode.Parse("""{"a":null}"""))!.ToJsonString());
    }

    private static JsonNode? Apply(string document, string patch) => JsonPatch.Parse(Encoding.UTF8.GetBytes(patch)).Apply(JsonNode.Parse(document));
}
