using ClubCycle.Planning.Players;

namespace ClubCycle.Planning.Tests.Players;

public sealed class SmallGroupTests
{
    [Fact]
    public void Four_are_too_few_to_tell() => Assert.False(SmallGroup.MayTell(4));

    [Fact]
    public void Five_may_be_told() => Assert.True(SmallGroup.MayTell(5));
}
