using ClubCycle.Planning.Squads;

namespace ClubCycle.Planning.Tests.Squads;

public class NoticeAddressTests
{
    [Theory]
    [InlineData("list@example.org")]
    [InlineData("women.1+notices@lists.example.org")]
    [InlineData("a@b.co")]
    public void One_plain_address_is_taken(string typed) => Assert.Equal(typed, NoticeAddress.Create($" {typed} ").OrThrow());

    [Theory]
    [InlineData("")]
    [InlineData("   ")]
    [InlineData(null)]
    public void Nothing_means_nowhere(string? typed) => Assert.Null(NoticeAddress.Create(typed).OrThrow());

    [Theory]
    [InlineData("list")]
    [InlineData("list@")]
    [InlineData("@example.org")]
    [InlineData("list@example")]
    [InlineData("list@example.org.")]
    [InlineData("list@@example.org")]
    [InlineData("list@-example.org")]
    [InlineData(".list@example.org")]
    [InlineData("a@example.org,b@example.org")]
    [InlineData("a@example.org;b@example.org")]
    [InlineData("a@example.org b@example.org")]
    [InlineData("Women <list@example.org>")]
    [InlineData("\"a b\"@example.org")]
    [InlineData("list@example.org\r\nBcc: all@example.org")]
    [InlineData("list@example.org\n")]
    [InlineData("li\rst@example.org")]
    [InlineData("list\0@example.org")]
    [InlineData("list@ex\tample.org")]
    public void Anything_that_is_not_one_plain_address_is_refused(string typed) =>
        Assert.Equal("squad.notice-address", Assert.IsType<Result<string?>.Failed>(NoticeAddress.Create(typed)).First.Code);

    [Theory]
    [InlineData(64, 254, true)]
    [InlineData(65, 254, false)]
    [InlineData(64, 255, false)]
    public void It_is_as_long_as_mail_servers_must_take(int local, int all, bool taken)
    {
        var host = string.Join('.', Enumerable.Repeat(new string('h', 45), 4)) + ".";
        var address = new string('l', local) + "@" + host + new string('e', all - local - 1 - host.Length);

        Assert.Equal((all, taken), (address.Length, NoticeAddress.Create(address) is Result<string?>.Ok));
    }
}
