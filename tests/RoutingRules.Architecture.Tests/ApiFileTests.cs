namespace RoutingRules.Architecture.Tests;

public class ApiFileTests
{
    [Theory]
    [InlineData("RoutingRules.Abstractions")]
    [InlineData("RoutingRules.Verification")]
    [InlineData("RoutingRules")]
    [InlineData("RoutingRules.Planning")]
    [InlineData("RoutingRules.Reports")]
    public void Every_public_type_stands_in_the_list_of_its_assembly(string assembly)
    {
        var listed = SourceFiles
            .Lines($"src/{assembly}/PublicAPI.Unshipped.txt")
            .Concat(SourceFiles.Lines($"src/{assembly}/PublicAPI.Shipped.txt"))
            .Select(line => line.Split('<')[0])
            .ToHashSet(StringComparer.Ordinal);

        Assert.DoesNotContain(
            CompiledTypes.Of(assembly).Types.Where(type => type.IsPublic).Select(type => type.FullName.Split('`')[0]),
            name => !listed.Contains(name)
        );
    }
}
